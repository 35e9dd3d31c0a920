package io.github.firstoff.keyed;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The strip of points in as many columns as there are. */
class StripTest {
    private static final Limits LIMITS =
            Limits.between(new BigDecimal("39.95"), new BigDecimal("40.05"), Unit.MILLIMETRE);

    private static String strip(String value, int columns) {
        return Strip.of(LIMITS, List.of(new BigDecimal(value)), columns).orElse("");
    }

    @Test
    void inEveryWidth_itFits_andALimitIsNeverOnTheWrongSideOfTheReading() {
        for (int columns = 0; columns < 90; columns++) {
            for (String value :
                    List.of("39.90", "39.9499999", "39.95", "39.96", "40", "40.04", "40.05", "40.0500001", "41")) {
                String strip = strip(value, columns);
                if (columns < 13) {
                    assertThat(strip).isEmpty();
                    continue;
                }
                assertThat(strip.length()).isBetween(13, columns);
                int at = Math.max(strip.indexOf('●'), Math.max(strip.indexOf('◂'), strip.indexOf('▸')));
                int lower = strip.indexOf('│');
                int upper = strip.lastIndexOf('│');
                BigDecimal read = new BigDecimal(value);
                assertThat(upper).isGreaterThan(lower + 6);
                assertThat(at < lower)
                        .as("%s in %d: %s", value, columns, strip)
                        .isEqualTo(read.compareTo(new BigDecimal("39.95")) < 0);
                assertThat(at > upper)
                        .as("%s in %d: %s", value, columns, strip)
                        .isEqualTo(read.compareTo(new BigDecimal("40.05")) > 0);
            }
        }
    }

    @Test
    void withRoom_itIsAsWideAsEver() {
        assertThat(strip("40", 200)).isEqualTo("39.95     │                ●                │     40.05");
        assertThat(strip("40", 36)).isEqualTo("39.95     │      ●      │     40.05");
    }
}
