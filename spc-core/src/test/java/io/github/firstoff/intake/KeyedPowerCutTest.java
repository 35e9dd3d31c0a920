package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.plan.ResolvedPlan;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * A session whose power is cut between any two steps on the disk. The disk is simulated at its worst: what was not forced may be there,
 * be missing, be there in part, or be zeros.
 */
class KeyedPowerCutTest {
    static final String PLAN = """
            { "schema": "firstoff-plan-1",
              "part": { "number": "HQ-900-P", "drawing": "HQ-900", "revision": "A", "hand": "port", "counterpart": "HQ-900-S" },
              "unit": "mm",
              "characteristics": [
                { "number": "1", "feature": "outside diameter", "requirement": "40 ±0.05" },
                { "number": "2", "feature": "thread", "requirement": "M5x0.8-6H go/no-go", "settings": ["go end", "no-go end"] },
                { "number": "3", "feature": "hole", "requirement": "position Ø0.2 A B", "at": { "x": "10", "y": "-4" } } ] }
            """;

    private static final KeyedCircumstances AROUND =
            new KeyedCircumstances(OffsetDateTime.parse("2026-11-20T08:15:30Z"), Optional.of("A. Quill"), false);

    private static final int LIVES = 20;

    /** The power is gone. */
    private static final class PowerCut extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }

    /** Counts steps on the disk and cuts the power at one of them. */
    private static final class Power {
        private long left;

        Power(long steps) {
            left = steps;
        }

        /** Whether the step that comes is the one at which the power goes. */
        boolean fails() {
            return left-- == 0;
        }
    }

    /** What is on a simulated disk: a durable state, and what was done since in memory only. */
    private static final class Disk implements DurableFile {
        private byte[] durable;
        private byte[] now;
        private final Random random;
        private Power power = new Power(Long.MAX_VALUE);

        Disk(byte[] durable, Random random) {
            this.durable = durable;
            this.now = durable;
            this.random = random;
        }

        private void step() {
            if (power.fails()) {
                throw new PowerCut();
            }
        }

        /** The disk after the power was cut: what was forced, and of the rest whatever chance has left. */
        Disk afterPowerCut() {
            byte[] left = durable;
            if (!Arrays.equals(durable, now)) {
                int from = Math.min(durable.length, now.length);
                int length = from + random.nextInt(Math.max(durable.length, now.length) - from + 1);
                left = new byte[length];
                for (int i = 0; i < length; i++) {
                    boolean written = random.nextBoolean();
                    byte old = i < durable.length ? durable[i] : 0;
                    byte fresh = i < now.length ? now[i] : old;
                    left[i] = written ? fresh : old;
                }
            }
            return new Disk(left, random);
        }

        @Override
        public byte[] read() {
            return now.clone();
        }

        @Override
        public long size() {
            return now.length;
        }

        @Override
        public boolean isInPlace() {
            return true;
        }

        @Override
        public void write(long at, byte[] bytes) {
            step();
            byte[] longer = Arrays.copyOf(now, (int) Math.max(now.length, at + bytes.length));
            System.arraycopy(bytes, 0, longer, (int) at, bytes.length);
            now = longer;
            step();
        }

        @Override
        public void truncate(long size) {
            step();
            now = size < now.length ? Arrays.copyOf(now, (int) size) : now;
            step();
        }

        @Override
        public void force() {
            step();
            durable = now;
            step();
        }

        @Override
        public void close() {
            // Nothing to give back.
        }
    }

    static ResolvedPlan plan() {
        return PlanFile.read(Input.text("plan.json", PLAN)).resolve();
    }

    private static KeyedReadings open(ResolvedPlan plan, Disk journal, Disk csv) throws IOException {
        return KeyedReadings.open(plan, "hash", "r.csv", journal, csv, List.of());
    }

    /** The rows of a readings file, its heading included. */
    private static List<String> lines(Disk csv) {
        return new String(csv.read(), StandardCharsets.UTF_8).lines().toList();
    }

    /** One thing that a person does; the same numbers always do the same. */
    private static void act(KeyedReadings session, Random person) throws IOException {
        Optional<KeyedTask> next = session.next();
        int what = person.nextInt(20);
        if (next.isEmpty() || what == 0) {
            session.addPiece("P" + session.pieces().size());
        } else if (what == 1) {
            session.skip();
        } else if (what == 2 && session.canUndo()) {
            session.undo();
        } else if (what == 3) {
            session.setRemark("remark " + person.nextInt(100));
        } else if (what == 4) {
            session.again();
        } else if (what == 5 && session.count() > 0) {
            session.remarkOnLast("seen " + "again ".repeat(person.nextInt(5)) + person.nextInt(100));
        } else {
            session.keep(value(session, next.get(), person));
        }
    }

    static KeyedEntry.Sound value(KeyedReadings session, KeyedTask task, Random person) {
        List<String> typed = task.characteristic().isAttribute()
                ? List.of(person.nextInt(9) == 0 ? "fail" : "pass")
                : task.axes().isEmpty()
                        ? List.of("40.0" + person.nextInt(10))
                        : List.of("10.0" + person.nextInt(10), "-4.0" + person.nextInt(10));
        return (KeyedEntry.Sound) session.check(task, typed, AROUND);
    }

    @Test
    void cutAnywhere_nothingConfirmedIsLost_andTheSessionStandsWhereItStood() throws IOException {
        cutAnywhere(0, 8);
    }

    @Test
    @Tag("slow")
    void cutAnywhereOftener_nothingConfirmedIsLost() throws IOException {
        cutAnywhere(8, 108);
    }

    private void cutAnywhere(int fromSeed, int toSeed) throws IOException {
        ResolvedPlan plan = plan();
        int cuts = 0;
        int confirmedActs = 0;
        for (int seed = fromSeed; seed < toSeed; seed++) {
            Random chance = new Random(seed);
            Disk journal = new Disk(new byte[0], chance);
            Disk csv = new Disk(new byte[0], chance);
            List<Object> confirmed = List.of();
            inFlight = List.of();
            for (int life = 0; life < LIVES; life++) {
                Power power = new Power(chance.nextInt(120));
                journal.power = power;
                csv.power = power;
                try {
                    KeyedReadings session = open(plan, journal, csv);
                    if (!confirmed.isEmpty()) {
                        // What was in flight when the power went may have been kept or not; what was confirmed must be
                        // there.
                        assertThat(standing(session, csv))
                                .as("seed %d, life %d", seed, life)
                                .isIn(confirmed, inFlight);
                    }
                    while (true) {
                        confirmed = standing(session, csv);
                        inFlight = confirmed;
                        long person = chance.nextLong();
                        inFlight = foreseen(plan, journal, csv, person);
                        act(session, new Random(person));
                        confirmedActs++;
                    }
                } catch (PowerCut cut) {
                    cuts++;
                    journal = journal.afterPowerCut();
                    csv = csv.afterPowerCut();
                }
            }
        }
        assertThat(cuts).isEqualTo((toSeed - fromSeed) * LIVES);
        assertThat(confirmedActs).isGreaterThan(cuts);
    }

    private List<Object> inFlight = List.of();

    private static List<Object> standing(KeyedReadings session, Disk csv) {
        return List.of(lines(csv), session.next());
    }

    /** Where the session would stand if the act that follows were kept. */
    private List<Object> foreseen(ResolvedPlan plan, Disk journal, Disk csv, long person) throws IOException {
        Disk journalCopy = new Disk(journal.read(), new Random(0));
        Disk csvCopy = new Disk(csv.read(), new Random(0));
        KeyedReadings copy = open(plan, journalCopy, csvCopy);
        act(copy, new Random(person));
        return standing(copy, csvCopy);
    }

    @Test
    void aTornLastLine_atEveryByte_isFoundSaidAndMended() throws IOException {
        ResolvedPlan plan = plan();
        Disk journal = new Disk(new byte[0], new Random(1));
        Disk csv = new Disk(new byte[0], new Random(1));
        KeyedReadings session = open(plan, journal, csv);
        session.addPiece("P1");
        session.keep(value(session, session.next().orElseThrow(), new Random(1)));
        byte[] journalBefore = journal.read();
        byte[] csvBefore = csv.read();
        session.setRemark("a burr, \"small\"");
        byte[] journalRemarked = journal.read();
        session.keep(value(session, session.next().orElseThrow(), new Random(2)));
        byte[] journalAfter = journal.read();
        byte[] csvAfter = csv.read();
        assertThat(journalBefore.length).isLessThan(journalRemarked.length);

        for (int cut = journalRemarked.length; cut < journalAfter.length; cut++) {
            Disk torn = new Disk(Arrays.copyOf(journalAfter, cut), new Random(1));
            Disk file = new Disk(csvBefore, new Random(1));
            KeyedReadings again = open(plan, torn, file);
            assertThat(again.count()).as("journal cut at %d", cut).isEqualTo(1);
            assertThat(again.remark()).isEqualTo("a burr, \"small\"");
            assertThat(again.repairs()).hasSize(cut == journalRemarked.length ? 0 : 1);
            assertThat(file.read()).isEqualTo(csvBefore);
            assertThat(torn.read()).isEqualTo(journalRemarked);
        }
        for (int cut = csvBefore.length; cut < csvAfter.length; cut++) {
            Disk file = new Disk(Arrays.copyOf(csvAfter, cut), new Random(1));
            KeyedReadings again = open(plan, new Disk(journalAfter, new Random(1)), file);
            assertThat(again.count()).as("readings file cut at %d", cut).isEqualTo(2);
            assertThat(again.repairs()).singleElement().asString().contains("completed from r.csv.journal");
            assertThat(file.read()).isEqualTo(csvAfter);

            byte[] zeros = csvAfter.clone();
            Arrays.fill(zeros, cut, zeros.length, (byte) 0);
            Disk zeroed = new Disk(zeros, new Random(1));
            assertThat(open(plan, new Disk(journalAfter, new Random(1)), zeroed).count())
                    .isEqualTo(2);
            assertThat(zeroed.read()).isEqualTo(csvAfter);
        }
    }

    @Test
    void anyChangeByAnotherHand_isRefusedAndLeftAlone() throws IOException {
        ResolvedPlan plan = plan();
        Disk journal = new Disk(new byte[0], new Random(1));
        Disk csv = new Disk(new byte[0], new Random(1));
        KeyedReadings session = open(plan, journal, csv);
        session.addPiece("P1");
        for (int i = 0; i < 4; i++) {
            session.keep(value(session, session.next().orElseThrow(), new Random(i)));
        }
        byte[] journalBytes = journal.read();
        byte[] csvBytes = csv.read();
        List<Integer> unnoticed = new ArrayList<>();
        for (int at = 0; at < csvBytes.length; at++) {
            byte[] changed = csvBytes.clone();
            changed[at] ^= 1;
            Disk file = new Disk(changed, new Random(1));
            try {
                open(plan, new Disk(journalBytes, new Random(1)), file);
                unnoticed.add(at);
            } catch (InputRefused refused) {
                assertThat(refused.lines().get(0)).startsWith("r.csv:").contains("was changed since it was measured");
                assertThat(file.read()).isEqualTo(changed);
            }
        }
        assertThat(unnoticed).isEmpty();

        int lastLine =
                new String(journalBytes, StandardCharsets.UTF_8).stripTrailing().lastIndexOf('\n') + 1;
        for (int at = 0; at < lastLine; at++) {
            byte[] changed = journalBytes.clone();
            changed[at] ^= 1;
            Disk file = new Disk(changed, new Random(1));
            try {
                open(plan, file, new Disk(csvBytes, new Random(1)));
                unnoticed.add(at);
            } catch (InputRefused refused) {
                assertThat(refused.lines().get(0)).startsWith("r.csv.journal:");
                assertThat(file.read()).isEqualTo(changed);
            }
        }
        assertThat(unnoticed).isEmpty();
    }
}
