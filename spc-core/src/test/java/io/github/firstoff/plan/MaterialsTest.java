package io.github.firstoff.plan;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.ReferenceFile;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class MaterialsTest {
    private static final BigDecimal TWENTIETH = new BigDecimal("0.05");

    static List<Map<String, String>> published() {
        return ReferenceFile.rows("material/linear-expansion.csv");
    }

    @ParameterizedTest
    @MethodSource("published")
    void find_publishedRange_holdsTheValueAndIsCovered(Map<String, String> row) {
        Material found = Materials.find(row.get("material")).orElseThrow();
        BigDecimal least = new BigDecimal(row.get("least"));
        BigDecimal greatest = new BigDecimal(row.get("greatest"));
        assertThat(found.expansion()).isBetween(least, greatest);
        assertThat(found.expansion().subtract(found.halfWidth())).isLessThanOrEqualTo(least);
        assertThat(found.expansion().add(found.halfWidth())).isGreaterThanOrEqualTo(greatest);
    }

    @Test
    void all_halfWidthsAreAtLeastATwentieth() {
        assertThat(Materials.all()).hasSizeGreaterThan(25).allSatisfy(each -> {
            assertThat(each.halfWidth()).isGreaterThanOrEqualTo(each.expansion().multiply(TWENTIETH));
            // metals lie between Invar and zinc
            assertThat(each.expansion()).isBetween(new BigDecimal("0.000001"), new BigDecimal("0.00003"));
            assertThat(Materials.find(each.name())).contains(each);
        });
    }

    @ParameterizedTest
    @CsvSource({
        "EN AW-6061 T6, EN AW-6061",
        "EN AW-6061-T651, EN AW-6061",
        "en aw 6061 t6511, EN AW-6061",
        "6082-T6, EN AW-6082",
        "EN AW-5083 H111, EN AW-5083",
        "EN AW-7075-T7351, EN AW-7075",
        "1.4301, 1.4301",
        "14301, 1.4301",
        "X5CrNi18-10, 1.4301",
        "1.4301 (X5CrNi18-10), 1.4301",
        "1.4404 / AISI 316L, 1.4404",
        "C45E+QT, C45",
        "C45+N, C45",
        "42CrMo4+QT (1.7225), 42CrMo4",
        "100Cr6 hardened, 100Cr6",
        "EN-GJL-250, EN-GJL-250",
        "GG-25, EN-GJL-250",
        "CuSn8, CuSn8",
        "CuSn12-C, CuSn12",
        "Ti-6Al-4V, Ti-6Al-4V",
        "Steel, steel",
        "stainless steel, stainless steel",
        "Invar, Invar 36"
    })
    void find_usualSpellings(String text, String name) {
        assertThat(Materials.find(text)).map(Material::name).contains(name);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " ",
                "EN",
                "oak",
                "PA6",
                "6060",
                "EN AW-6061X",
                "1.43",
                "1.43011",
                "1.4301 / 1.4404",
                "C4",
                "C450",
                "CuSn1",
                "steel 4140 special",
                "T6"
            })
    void find_whatIsNotCertain_isNotFound(String text) {
        assertThat(Materials.find(text)).isEmpty();
    }

    @Test
    void thermal_carriesValueAndSource() {
        Thermal thermal = Materials.find("1.4301").orElseThrow().thermal(new BigDecimal("0.0000115"), BigDecimal.ONE);
        assertThat(thermal.expansion()).isEqualByComparingTo("0.000016");
        assertThat(thermal.expansionHalfWidth()).isEqualByComparingTo("0.0000013");
        assertThat(thermal.source()).isEqualTo("1.4301: (16.0 ± 1.3)·10⁻⁶ per kelvin, typical value of data sheets");
    }
}
