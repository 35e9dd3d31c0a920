package io.github.firstoff.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.firstoff.quantity.SourcedTable;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Names of materials; the ways of writing them are those of EN 573-1 and EN 10027-1, and common practice. */
class MaterialTableTest {
    private static MaterialTable<String> of(List<List<String>> rows) {
        return MaterialTable.of(new SourcedTable("t.csv", List.of("name", "also"), rows), row -> row.get(0));
    }

    @ParameterizedTest
    @ValueSource(strings = {"EN AW-6061", "en aw 6061", "AW6061", "6061", "AlMg1SiCu"})
    void named_howeverWritten_isFound(String name) {
        assertThat(of(List.of(List.of("EN AW-6061", "6061 | AlMg1SiCu"), List.of("C45", "")))
                        .named(name))
                .contains("EN AW-6061");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "606", "60612", "6061 T6"})
    void named_whatTheTableDoesNotSay_isNotGuessed(String name) {
        assertThat(of(List.of(List.of("EN AW-6061", "6061"), List.of("C45", "")))
                        .named(name))
                .isEmpty();
    }

    @Test
    void begunBy_severalNames_takesTheLongest() {
        MaterialTable<String> table = of(List.of(List.of("CuSn1", ""), List.of("CuSn12", "")));
        assertThat(table.begunBy("CuSn12 H", Pattern.compile("H?|2H"))).contains("CuSn12");
        assertThat(table.begunBy("CuSn12", Pattern.compile("H"))).isEmpty();
    }

    @Test
    void of_oneNameForTwo_isRefused() {
        assertThatThrownBy(() -> of(List.of(List.of("C45", "1.0503"), List.of("C45E", "1 0503"))))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("1 0503 is named twice");
    }
}
