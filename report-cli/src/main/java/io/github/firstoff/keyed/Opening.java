package io.github.firstoff.keyed;

import io.github.firstoff.intake.DecimalMark;
import io.github.firstoff.intake.KeyedOrder;
import io.github.firstoff.intake.KeyedReadings;
import io.github.firstoff.plan.PartIdentity;
import io.github.firstoff.sheet.Phrases;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * How a session begins or goes on: where it stands, what the command line asks for, and what must be settled before anything is measured.
 * A session that goes on keeps the order, the repeats and the decimal mark it had; a command line that says otherwise is questioned.
 */
final class Opening {
    private final KeyedReadings session;
    private final Screen screen;
    private final Settings settings;
    private final Prompts prompts;
    private final Deque<Question> questions = new ArrayDeque<>();

    Opening(KeyedReadings session, Screen screen, Settings settings, Prompts prompts) {
        this.session = session;
        this.screen = screen;
        this.settings = settings;
        this.prompts = prompts;
    }

    // ---- where the session stands

    /** Says what is measured, into which file, and where the session stands. */
    void greet() {
        PartIdentity part = session.plan().part();
        screen.line("Measuring " + part.number() + " revision " + part.revision()
                + part.name().map(name -> ", " + name).orElse("")
                + part.hand().map(hand -> " (" + hand.word() + ")").orElse("") + ". Readings go to " + session.name()
                + ".");
        session.repairs().forEach(repair -> screen.line("note: " + repair));
        if (session.isResumed()) {
            screen.line("The session goes on where it stood: "
                    + Phrases.counted(session.count(), "reading", "readings") + " on "
                    + Phrases.counted(session.pieces().size(), "piece", "pieces") + ".");
            standing().forEach(each -> screen.line("  " + each));
        }
        screen.line("Type a value and Enter; help or ? tells what else.");
    }

    /** What was decided earlier, is not seen in the question that comes, and works on what is keyed next. */
    private List<String> standing() {
        List<String> lines = new ArrayList<>();
        if (session.order() == KeyedOrder.CHARACTERISTIC) {
            lines.add("One characteristic is asked for on all pieces, then the next.");
        }
        if (session.repeats() > 0) {
            lines.add("What is measured repeatedly ends with " + readings(session.repeats()) + '.');
        }
        if (session.decimalMark() == DecimalMark.COMMA) {
            lines.add("The comma is the decimal mark.");
        }
        if (!session.temperature().isEmpty()) {
            lines.add("Lengths are kept as read at " + session.temperature() + " °C.");
        }
        if (!session.remark().isEmpty()) {
            lines.add("The next value has the remark: " + session.remark());
        }
        session.last()
                .flatMap(reading -> reading.context().operator())
                .filter(before -> !settings.operator().equals(Optional.of(before)))
                .map(before -> "The reading kept last was taken by " + before + "; those that follow name "
                        + settings.operator().orElse("nobody, since --operator is not stated") + '.')
                .ifPresent(lines::add);
        return lines;
    }

    private static String readings(int count) {
        return Phrases.counted(count, "reading", "readings");
    }

    // ---- what must be settled

    /** Does what the command line asks for; what must be confirmed before that comes back as questions, in their order. */
    Deque<Question> questions() throws IOException {
        if (session.isPlanChanged()) {
            questions.add(new Question(
                    "The plan's file was changed since these readings were begun. Held against it as it is now, "
                            + prompts.keptVerdicts() + '.',
                    session::takePlan));
        }
        OtherHand hand = new OtherHand(session.plan().part());
        for (String statement : settings.jobStatements()) {
            hand.in(statement)
                    .ifPresent(why -> questions.add(new Question("The job: " + statement + ' ' + why + '.', () -> {})));
        }
        askOrTake(contradictions(), this::takeOptions);
        List<String> wished = settings.pieces().stream()
                .filter(piece -> !session.pieces().contains(piece))
                .toList();
        askOrTake(doubts(hand, wished), () -> takePieces(wished));
        return questions;
    }

    private void askOrTake(List<String> doubts, Question.Step step) throws IOException {
        if (doubts.isEmpty()) {
            step.take();
        } else {
            questions.add(new Question(String.join(" ", doubts), step));
        }
    }

    private boolean goesOn() {
        return session.isResumed() && !session.isAdopted();
    }

    /** Where the command line says otherwise than the session. */
    private List<String> contradictions() {
        if (!goesOn()) {
            return List.of();
        }
        List<String> found = new ArrayList<>();
        settings.order()
                .filter(order -> order != session.order())
                .ifPresent(order -> found.add(
                        "The session is by " + session.order().word() + ", and --by says " + order.word() + '.'));
        settings.repeats().ifPresent(times -> {
            if (times != session.repeats()) {
                found.add("In this session, what is measured repeatedly ends "
                        + (session.repeats() == 0
                                ? "when next or Enter is keyed"
                                : "with " + readings(session.repeats()))
                        + ", and --repeats says " + times + '.');
            }
        });
        settings.decimalMark()
                .filter(mark -> mark != session.decimalMark())
                .ifPresent(mark ->
                        found.add("The session has the " + session.decimalMark().word()
                                + " as its decimal mark, and --decimal-mark says " + mark.word() + '.'));
        if (!found.isEmpty()) {
            found.add("confirm changes the session; to go on as before, stop and leave the option out.");
        }
        return found;
    }

    private List<String> doubts(OtherHand hand, List<String> wished) {
        List<String> found = new ArrayList<>();
        List<String> ofOtherHand =
                wished.stream().filter(piece -> hand.in(piece).isPresent()).toList();
        if (!ofOtherHand.isEmpty()) {
            found.add("The piece " + ofOtherHand.get(0) + ' '
                    + hand.in(ofOtherHand.get(0)).orElseThrow() + andMore(ofOtherHand.size()) + "; the plan is for "
                    + prompts.ownHand() + '.');
        }
        if (goesOn() && !session.pieces().isEmpty() && !wished.isEmpty()) {
            found.add("The session has " + Phrases.counted(session.pieces().size(), "piece", "pieces")
                    + "; the command line names " + wished.size() + " that "
                    + (wished.size() == 1 ? "is not" : "are not") + " among them, " + wished.get(0)
                    + andMore(wished.size()) + ". confirm adds "
                    + (wished.size() == 1 ? "it." : "them."));
        }
        return found;
    }

    private static String andMore(int count) {
        return count > 1 ? " (and " + (count - 1) + " more)" : "";
    }

    private void takeOptions() throws IOException {
        if (settings.order().isPresent()) {
            session.setOrder(settings.order().get());
        }
        if (settings.repeats().isPresent()) {
            session.setRepeats(settings.repeats().getAsInt());
        }
        if (settings.decimalMark().isPresent()) {
            session.setDecimalMark(settings.decimalMark().get());
        }
    }

    private void takePieces(List<String> wished) throws IOException {
        for (String piece : wished) {
            session.givePiece(piece);
        }
        if (!settings.pieces().isEmpty() && !session.isClosed()) {
            session.closePieces();
        }
    }
}
