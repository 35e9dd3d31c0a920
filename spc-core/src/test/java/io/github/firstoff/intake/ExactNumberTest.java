package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ExactNumberTest {

    @ParameterizedTest
    @CsvSource({
        "12.5, 12.5",
        "12.500, 12.500",
        "+12.5, 12.5",
        "-0.003, -0.003",
        "\u22120.003, -0.003",
        ".2500, 0.2500",
        "-.25, -0.25",
        "007.50, 7.50",
        "0, 0",
        "40, 40",
        "0.1000000000000000055511151231257827021, 0.1000000000000000055511151231257827021"
    })
    void written_keepsEveryDigit(String text, String digits) throws NumberRefused {
        assertThat(ExactNumber.written(text).toPlainString()).isEqualTo(digits);
    }

    @ParameterizedTest
    @CsvSource({
        "1e-3, 0.001",
        "1.250E1, 12.50",
        "5e-05, 0.00005",
        "1e3, 1000",
        "0e999999999, 0",
        "-0.0e-999, 0",
        "1e30, 1000000000000000000000000000000"
    })
    void literal_writesTheExponentOut(String text, String digits) throws NumberRefused {
        BigDecimal number = ExactNumber.literal(text);

        assertThat(number.toPlainString()).isEqualTo(digits);
        assertThat(number.scale()).isNotNegative();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "1e31",
                "1e-31",
                "1e999999",
                "-1e-999999",
                "1e99999999999999999999",
                "1e+0000000000000000000000000000031"
            })
    void literal_outOfRange_isRefused(String text) {
        NumberRefused refused = catchThrowableOfType(NumberRefused.class, () -> ExactNumber.literal(text));

        assertThat(refused.kind()).isEqualTo(FaultKind.NUMBER_OUT_OF_RANGE);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " ",
                "-",
                "+",
                ".",
                "-.",
                "12.",
                "1e3",
                "1E-5",
                "0x12",
                "12,5",
                "1.250,5",
                "1,250.5",
                "12 500",
                "12\u00a0500",
                "12'500",
                "12.5.1",
                "--12",
                "+-12",
                "12-",
                "12.5mm",
                "12.5 mm",
                "12.5\"",
                "½",
                "NaN",
                "nan",
                "Infinity",
                "-inf",
                "1_000",
                "12.5f",
                "12.5d",
                "0b1",
                "\u0661\u0662",
                "\uff11\uff12",
                "12\u066b5",
                "\u2013" + "12",
                "ten",
                "#REF!",
                "1/2"
            })
    void written_whateverElse_isRefused(String text) {
        NumberRefused refused = catchThrowableOfType(NumberRefused.class, () -> ExactNumber.written(text));

        assertThat(refused).as(text).isNotNull();
        assertThat(refused.expected()).isNotBlank();
    }

    @Test
    void comma_bothReadingsAreShownAndNoneIsChosen() {
        NumberRefused refused = catchThrowableOfType(NumberRefused.class, () -> ExactNumber.written("-12,500"));

        assertThat(refused.kind()).isEqualTo(FaultKind.AMBIGUOUS_NUMBER);
        assertThat(refused.message()).isEqualTo("the comma could mean -12.500 or -12500");
    }

    @Test
    void fortyDigitsAreRead_fortyOneAreNot() throws NumberRefused {
        assertThat(ExactNumber.written("1." + "5".repeat(39)).precision()).isEqualTo(40);
        assertThat(catchThrowableOfType(NumberRefused.class, () -> ExactNumber.written("1." + "5".repeat(40)))
                        .kind())
                .isEqualTo(FaultKind.NUMBER_OUT_OF_RANGE);
    }

    /** Whatever a decimal prints is read back to the same decimal; the seed is fixed. */
    @Test
    void writtenIsTheInverseOfPrinting() throws NumberRefused {
        Random random = new Random(52_2026);
        for (int i = 0; i < 20_000; i++) {
            BigDecimal number = new BigDecimal(new BigInteger(random.nextInt(90), random), random.nextInt(25));
            number = random.nextBoolean() ? number.negate() : number;
            assertThat(ExactNumber.written(number.toPlainString())).isEqualTo(number);
        }
    }
}
