package io.github.firstoff.keyed;

import io.github.firstoff.conformance.Judge;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.intake.DecimalMark;
import io.github.firstoff.intake.KeyedOrder;
import io.github.firstoff.intake.KeyedReadings;
import io.github.firstoff.intake.KeyedTask;
import io.github.firstoff.plan.Gauge;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.sheet.Phrases;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Carries out what is typed instead of a value. */
final class Orders {
    private static final int NARROW = 72;

    private final KeyedReadings session;
    private final Screen screen;
    private final Prompts prompts;
    private final Judge judge;

    Orders(KeyedReadings session, Screen screen, Prompts prompts, Judge judge) {
        this.session = session;
        this.screen = screen;
        this.prompts = prompts;
        this.judge = judge;
    }

    /**
     * Carries it out.
     *
     * @return whether what is asked must be introduced anew
     */
    boolean carryOut(Word word, String behind, Optional<KeyedTask> asked) throws IOException {
        switch (word) {
            case UNDO -> {
                return undo();
            }
            case SKIP -> {
                if (asked.isEmpty()) {
                    say("There is nothing to skip.");
                } else {
                    session.skip();
                    say("Skipped.");
                }
            }
            case AGAIN -> {
                if (session.skipped().isEmpty()) {
                    say("Nothing was skipped.");
                } else {
                    session.again();
                    return true;
                }
            }
            case REMARK -> remark(behind);
            case GAUGE -> {
                return gauge(behind, asked);
            }
            case TEMPERATURE -> temperature(number(behind));
            case SIZE -> size(number(behind));
            case LIST -> {
                list(asked);
                return true;
            }
            case CHART -> chart(asked);
            case HELP -> help();
            default -> throw new IllegalArgumentException(word + " is carried out by the dialogue");
        }
        return false;
    }

    /** What is keyed as a number, with a point: where commas are decimal marks, one comma is one. */
    private String number(String keyed) {
        boolean one = keyed.indexOf(',') >= 0 && keyed.indexOf(',') == keyed.lastIndexOf(',');
        return session.decimalMark() == DecimalMark.COMMA && one && keyed.indexOf('.') < 0
                ? keyed.replace(',', '.')
                : keyed;
    }

    private void say(String text) {
        screen.line("    " + text);
    }

    /** Whether the screen has no room for columns side by side. */
    private boolean isNarrow() {
        return screen.width() < NARROW;
    }

    private boolean undo() throws IOException {
        if (!session.canUndo()) {
            say("There is nothing to undo.");
            return false;
        }
        KeyedReadings.TakenBack back = session.undo();
        if (back.reading().isPresent()) {
            Reading reading = back.reading().get();
            say("Taken back: " + back.part().orElseThrow() + ", " + reading.characteristic() + ", "
                    + Found.value(reading) + '.');
        } else {
            say(back.part()
                    .map(piece -> "The piece " + piece + " is not among the pieces any more.")
                    .orElse("The last skip was taken back."));
        }
        return true;
    }

    private void remark(String text) throws IOException {
        boolean onLast = text.toLowerCase(Locale.ROOT).startsWith("last ");
        String remark = onLast ? text.substring("last ".length()).strip() : text;
        Optional<String> refused = KeyedReadings.refusalOfRemark(remark);
        if (refused.isPresent()) {
            say("Not taken: " + refused.get() + '.');
        } else if (onLast && session.count() == 0) {
            say("There is no reading to remark on.");
        } else if (onLast) {
            session.remarkOnLast(remark);
            say("The remark stands beside the reading kept last.");
        } else {
            session.setRemark(remark);
            say("The remark will stand beside the next value.");
        }
    }

    private boolean gauge(String id, Optional<KeyedTask> asked) throws IOException {
        if (asked.isEmpty()) {
            say("A gauge is chosen for the characteristic that is asked for.");
            return false;
        }
        if (id.isEmpty()) {
            for (Gauge each : session.plan().plan().gauges()) {
                say(each.id()
                        + each.kind().map(kind -> "  " + kind).orElse("")
                        + each.calibrationDue()
                                .map(due -> "  calibration due " + due)
                                .orElse(""));
            }
            if (session.plan().plan().gauges().isEmpty()) {
                say("The plan lists no gauges; gauge ID names one all the same.");
            }
            return false;
        }
        Optional<String> refused = session.refusalOfGauge(id);
        if (refused.isPresent()) {
            say("Not taken: " + refused.get() + '.');
            return false;
        }
        session.setGauge(asked.get().characteristic(), id);
        return true;
    }

    private void temperature(String degrees) throws IOException {
        boolean off = degrees.equalsIgnoreCase("off");
        Optional<String> refused = degrees.isEmpty()
                ? Optional.of("name the temperature of the pieces in °C, or off")
                : session.refusalOfTemperature(off ? "" : degrees);
        if (refused.isPresent()) {
            say("Not taken: " + refused.get() + '.');
        } else {
            session.setTemperature(off ? "" : degrees);
            say(
                    off
                            ? "No temperature is stated from now on."
                            : "Lengths are kept as read at " + degrees + " °C from now on.");
        }
    }

    private void size(String size) throws IOException {
        Optional<String> refused = size.isEmpty()
                ? Optional.of("name on how much is counted, such as size 2.5")
                : session.refusalOfSize(size);
        if (refused.isPresent()) {
            say("Not taken: " + refused.get() + '.');
        } else {
            session.setSize(size);
            say("Nonconformities are counted on " + size + " from now on.");
        }
    }

    private void chart(Optional<KeyedTask> asked) {
        List<String> lines = asked.map(task -> prompts.chart(task.characteristic(), screen.width()))
                .orElse(List.of());
        lines.forEach(screen::line);
        if (lines.isEmpty()) {
            say("There is nothing to draw.");
        }
    }

    private void help() {
        for (Word word : Word.values()) {
            if (isNarrow()) {
                say(word.word());
                say("  " + word.does());
            } else {
                say(String.format(Locale.ROOT, "%-12s %s", word.word(), word.does()));
            }
        }
        say(
                "Values: 12.503, 12.503 mm, 0.4922 in, 45°30' or 45d30m, pass, fail. A value is kept as soon as its verdict stands.");
    }

    private void list(Optional<KeyedTask> asked) {
        if (asked.isPresent() && session.order() == KeyedOrder.CHARACTERISTIC) {
            ResolvedCharacteristic characteristic = asked.get().characteristic();
            session.pieces().forEach(piece -> lines(session.piece(piece), characteristic, piece));
        } else {
            List<String> pieces = session.pieces();
            String piece = asked.map(KeyedTask::part).orElse(pieces.isEmpty() ? "" : pieces.get(pieces.size() - 1));
            session.plan().characteristics().forEach(each -> lines(session.piece(piece), each, each.number()));
        }
        int open = session.open().size();
        int skipped = session.skipped().size();
        say(Phrases.counted(session.count(), "reading", "readings") + " kept, " + open + " to be measured, " + skipped
                + " skipped.");
    }

    private void lines(PartRecord piece, ResolvedCharacteristic characteristic, String label) {
        List<Reading> readings = piece.of(characteristic.number());
        String begin = String.format(
                Locale.ROOT,
                isNarrow() ? "%s  %s  " : "%-8s %s  ",
                label,
                characteristic.characteristic().printed());
        if (readings.isEmpty()) {
            say(begin + "-");
        }
        for (Reading reading : readings) {
            Judgement judgement = judge.judge(characteristic, piece, reading);
            say(begin
                    + reading.context().setting().map(setting -> setting + ": ").orElse("")
                    + Found.value(reading) + "  "
                    + (characteristic.isJudged() ? Screen.sign(judgement.verdict()) + ' ' : "")
                    + Found.verdict(characteristic, judgement)
                    + reading.context().note().map(note -> "  (" + note + ")").orElse(""));
        }
    }
}
