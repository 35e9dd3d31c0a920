package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.plan.ResolvedPlan;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What was probably meant, and that looking for it takes no longer for texts that nobody would write. */
class NearestTest {

    /** Words of three letters are so few that all kinds of a step come up. The seed of each round is its number. */
    @RepeatedTest(50)
    void oneStep_isADistanceOfOne(RepetitionInfo round) {
        Random random = new Random(round.getCurrentRepetition());
        for (int i = 0; i < 400; i++) {
            String a = word(random);
            String b = word(random);
            assertThat(Nearest.isOneStep(a, b)).as("%s and %s", a, b).isEqualTo(Nearest.distance(a, b) == 1);
        }
    }

    private static String word(Random random) {
        return random.ints(random.nextInt(5), 0, 3)
                .mapToObj(letter -> String.valueOf((char) ('a' + letter)))
                .collect(Collectors.joining());
    }

    @Test
    void aKnownPair_isToldAsItIs() {
        assertThat(Nearest.isOneStep("12", "21")).isTrue();
        assertThat(Nearest.isOneStep("12", "112")).isTrue();
        assertThat(Nearest.isOneStep("12", "1")).isTrue();
        assertThat(Nearest.isOneStep("12", "13")).isTrue();
        assertThat(Nearest.isOneStep("12", "12")).isFalse();
        assertThat(Nearest.isOneStep("12", "34")).isFalse();
        assertThat(Nearest.isOneStep("", "1")).isTrue();
    }

    /** Three thousand characteristics, and names of thousands of letters that none of them has: some seconds would be minutes too many. */
    @Test
    @Timeout(20)
    void longNamesAndALargePlan_takeNoLonger() {
        String characteristics = IntStream.rangeClosed(1, 3000)
                .mapToObj(i -> "{\"number\": \"" + i + "\", \"feature\": \"f\", \"requirement\": \"12.5 ±0.05\"}")
                .collect(Collectors.joining(",", "[", "]"));
        String head = "{ \"schema\": \"firstoff-plan-1\", \"part\": { \"number\": \"HQ-310-P\", \"revision\": \"C\" },"
                + " \"unit\": \"mm\", \"characteristics\": ";
        ResolvedPlan plan = PlanFile.read(Input.text("plan.json", head + characteristics + "}"))
                .resolve();
        String rows = IntStream.range(0, 300)
                .mapToObj(i -> "S" + i + "," + "x".repeat(9000) + ",12.5\n")
                .collect(Collectors.joining("", "part,characteristic,value\n", ""));
        Intake intake = ReadingFiles.readInputs(plan, List.of(Input.text("r.csv", rows)));
        assertThat(intake.rows()).isEqualTo(new RowCounts(300, 0, 300, 0));
        // A hundred lines of cells before anything that could be a heading.
        Intake cells =
                ReadingFiles.readInputs(plan, List.of(Input.text("r.csv", ("a,".repeat(300) + "\n").repeat(2000))));
        assertThat(cells.rows().used()).isZero();
    }
}
