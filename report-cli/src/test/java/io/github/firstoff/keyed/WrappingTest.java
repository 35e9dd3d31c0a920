package io.github.firstoff.keyed;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Lines on a narrow screen. */
class WrappingTest {
    @Test
    void aLineThatFits_staysAsItIs() {
        assertThat(Wrapping.lines("    ✓ conforms, 0.0065 mm inside", 40))
                .containsExactly("    ✓ conforms, 0.0065 mm inside");
        assertThat(Wrapping.lines("", 40)).containsExactly("");
    }

    @Test
    void aLine_isBrokenBetweenItsParts_andNeverBeforeAUnit() {
        assertThat(Wrapping.lines(" 1  bore: Ø12 H7  (12 to 12.018 mm)  gauge BG-5, bore gauge", 36))
                .containsExactly(" 1  bore: Ø12 H7  (12 to 12.018 mm)", "   gauge BG-5, bore gauge");
        assertThat(Wrapping.lines("    it looks like 160.03 mm instead", 25))
                .containsExactly("    it looks like", "      160.03 mm instead");
        assertThat(Wrapping.lines("  P-014, 6 at go end, pass or fail:", 28))
                .containsExactly("  P-014, 6 at go end,", "    pass or fail:");
    }

    @Test
    void marksAboveLetters_takeNoColumn_andIdeographsTwo() {
        assertThat(Wrapping.columns("Mu\u0308ller")).isEqualTo(6);
        assertThat(Wrapping.columns("点1")).isEqualTo(3);
    }

    /** No word is lost, doubled or moved, and no line is longer than the screen unless a single word is. */
    @Test
    void whateverTheText_nothingIsLost() {
        Random random = new Random(11);
        for (int run = 0; run < 20_000; run++) {
            StringBuilder text = new StringBuilder(" ".repeat(random.nextInt(9)));
            int words = 1 + random.nextInt(25);
            for (int i = 0; i < words; i++) {
                text.append(i == 0 ? "" : " ".repeat(random.nextInt(4) == 0 ? 2 + random.nextInt(5) : 1));
                text.append(random.nextInt(6) == 0 ? "mm" : "0123456789ab".substring(random.nextInt(12)));
            }
            int width = 20 + random.nextInt(60);
            List<String> lines = Wrapping.lines(text.toString(), width);
            assertThat(String.join(" ", lines).strip().split(" +", -1))
                    .as("run %d", run)
                    .isEqualTo(text.toString().strip().split(" +", -1));
            // The longest word and its unit, and what is set in.
            assertThat(lines)
                    .as("run %d, %s in %d", run, text, width)
                    .allMatch(line ->
                            line.length() <= width || line.strip().split("(?<!\\d) +| +(?!mm)", -1).length == 1);
        }
    }
}
