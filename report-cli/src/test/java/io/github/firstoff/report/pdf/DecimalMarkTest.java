package io.github.firstoff.report.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DecimalMarkTest {
    @ParameterizedTest
    @CsvSource({"12.5, 2", "−0.01, 2", "+0.02, 2", "0, 1", "125, 3", "1 of 3, 1", "Ø6.6, 2", "≤0.02, 2", "—, 1"})
    void markStandsAfterTheFirstRowOfDigits(String figure, int place) {
        assertThat(DecimalMark.in(figure)).isEqualTo(place);
    }

    @Test
    void onlyTextWithDigitsIsAFigure() {
        assertThat(DecimalMark.isFigure("0.1")).isTrue();
        assertThat(DecimalMark.isFigure("—")).isFalse();
        assertThat(DecimalMark.isFigure("not measured")).isFalse();
    }

    @Test
    void labelsAreSpreadToALeastDistanceAndStayInOrder() {
        double[] spread = Spread.apart(new double[] {10, 11, 12, 60}, 8, 0, 70);
        assertThat(spread).hasSize(4).isSorted();
        for (int i = 1; i < spread.length; i++) {
            assertThat(spread[i] - spread[i - 1]).isGreaterThanOrEqualTo(8 - 1e-9);
        }
        assertThat(spread[3]).isEqualTo(60);
    }

    @Test
    void labelsAtTheFootArePushedUp() {
        double[] spread = Spread.apart(new double[] {64, 66, 69}, 8, 0, 70);
        assertThat(spread[2]).isLessThanOrEqualTo(70);
        assertThat(spread[1]).isLessThanOrEqualTo(spread[2] - 8);
        assertThat(spread[0]).isLessThanOrEqualTo(spread[1] - 8);
    }
}
