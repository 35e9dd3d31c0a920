package io.github.firstoff.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.firstoff.ReferenceFile;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class UnitTest {

    static List<Map<String, String>> inches() {
        return ReferenceFile.rows("conformity/inch-to-mm.csv");
    }

    @ParameterizedTest
    @MethodSource("inches")
    void convert_inchToMillimetre_exact(Map<String, String> row) {
        assertThat(Unit.INCH.convert(new BigDecimal(row.get("inch")), Unit.MILLIMETRE))
                .isEqualByComparingTo(row.get("mm"));
    }

    @Test
    void convert_inchToMillimetreAndBack_isTheSameForAnyDecimal() {
        SplittableRandom random = new SplittableRandom(20261125);
        for (int i = 0; i < 2_000; i++) {
            BigDecimal inch =
                    BigDecimal.valueOf(random.nextLong(-1_000_000_000L, 1_000_000_000L), random.nextInt(0, 9));
            BigDecimal there = Unit.INCH.convert(inch, Unit.MILLIMETRE);
            assertThat(Unit.MILLIMETRE.convert(there, Unit.INCH)).isEqualByComparingTo(inch);
            assertThat(Unit.compare(inch, Unit.INCH, there, Unit.MILLIMETRE)).isZero();
        }
    }

    @Test
    void convert_millimetreToInchWithoutFiniteDecimal_refusesToRound() {
        assertThatThrownBy(() -> Unit.MILLIMETRE.convert(BigDecimal.TEN, Unit.INCH))
                .isInstanceOf(ArithmeticException.class);
    }

    @Test
    void convert_lengthToAngle_refused() {
        assertThatThrownBy(() -> Unit.MILLIMETRE.convert(BigDecimal.ONE, Unit.DEGREE))
                .hasMessageContaining("mm")
                .hasMessageContaining("degree");
    }

    @Test
    void convert_roughness_microinchIs0point0254Micrometre() {
        // By definition: 1 µin = 25.4 mm / 1 000 000.
        assertThat(Unit.MICROINCH.convert(new BigDecimal("32"), Unit.MICROMETRE))
                .isEqualByComparingTo("0.8128");
    }

    @Test
    void parse_usualSpellings_understood() {
        assertThat(Unit.parse("MM")).contains(Unit.MILLIMETRE);
        assertThat(Unit.parse(" inch ")).contains(Unit.INCH);
        assertThat(Unit.parse("um")).contains(Unit.MICROMETRE);
        assertThat(Unit.parse("\u03bcm")).contains(Unit.MICROMETRE);
        assertThat(Unit.parse("deg")).contains(Unit.DEGREE);
        assertThat(Unit.parse("furlong")).isEmpty();
    }
}
