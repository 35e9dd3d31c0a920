package io.github.firstoff.keyed;

import io.github.firstoff.conformance.Doubt;
import io.github.firstoff.conformance.Judge;
import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.conformance.Plausibility;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.intake.DecimalMark;
import io.github.firstoff.intake.Fault;
import io.github.firstoff.intake.KeyedCircumstances;
import io.github.firstoff.intake.KeyedEntry;
import io.github.firstoff.intake.KeyedOrder;
import io.github.firstoff.intake.KeyedReadings;
import io.github.firstoff.intake.KeyedTask;
import io.github.firstoff.plan.Gauge;
import java.io.IOException;
import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The guided session: asks, understands, questions, keeps. One line in, some lines out, until everything is measured, the person stops,
 * or the input ends.
 */
public final class Dialogue {
    /** A number with a decimal mark, or several numbers: a data key was perhaps pressed while a name is asked for. */
    private static final Pattern LIKE_A_VALUE = Pattern.compile(
            "[-+\u2212]?\\d*[.,]\\d+(?:\\s.*)?|[-+\u2212]\\d+(?:\\s.*)?|\\d+\\s?(?:mm|in|inch|\u00B5m|\u00B0)");

    private final KeyedReadings session;
    private final Lines lines;
    private final Screen screen;
    private final Settings settings;
    private final Judge judge;
    private final Plausibility plausibility;
    private final Prompts prompts;
    private final Orders orders;
    private Deque<Question> opening = new ArrayDeque<>();
    private final List<String> along = new ArrayList<>();
    private final Set<String> told = new HashSet<>();
    private final Set<String> finerConfirmed = new HashSet<>();
    private @Nullable Question doubt;
    private @Nullable KeyedTask asked;
    private String shownPiece = "";

    /**
     * A session that was opened.
     *
     * @param session the session
     * @param lines what is keyed
     * @param screen where the dialogue is shown
     * @param settings what the command line says
     */
    public Dialogue(KeyedReadings session, Lines lines, Screen screen, Settings settings) {
        this.session = session;
        this.lines = lines;
        this.screen = screen;
        this.settings = settings;
        this.judge = Judge.of(session.plan());
        this.plausibility = Plausibility.of(session.plan());
        this.prompts = new Prompts(session, settings, judge);
        this.orders = new Orders(session, screen, prompts, judge);
    }

    /** How a session ended. */
    public enum End {
        /** Everything was measured. */
        COMPLETE("complete"),
        /** The person stopped. */
        STOPPED("stopped"),
        /** There was nothing more to read. */
        END_OF_INPUT("end-of-input"),
        /** What was questioned at the beginning was not settled, so nothing was measured. */
        UNSETTLED("unsettled");

        private final String word;

        End(String word) {
            this.word = word;
        }

        /** The word in results. */
        public String word() {
            return word;
        }
    }

    /**
     * Holds the session.
     *
     * @throws IOException if the input cannot be read or a reading cannot be written; everything confirmed before is kept
     */
    public End run() throws IOException {
        Opening beginning = new Opening(session, screen, settings, prompts);
        beginning.greet();
        opening = beginning.questions();
        rememberFiner();
        while (true) {
            ask();
            Lines.Line line = lines.next();
            if (line instanceof Lines.End end) {
                screen.endOfInput(end.rest());
                if (!end.rest().isEmpty()) {
                    screen.line("    The input ended within a line; \"" + end.rest() + "\" was not taken.");
                }
                return ended(End.END_OF_INPUT);
            }
            if (line instanceof Lines.Unusable unusable) {
                screen.answered("");
                screen.line("    Not taken: " + unusable.why() + '.');
                continue;
            }
            String text = ((Lines.Text) line).text();
            screen.answered(text);
            if (Word.of(text).filter(word -> word == Word.STOP).isPresent()) {
                return ended(End.STOPPED);
            }
            take(text);
        }
    }

    private End ended(End how) {
        boolean nothingLeft = !session.pieces().isEmpty()
                && session.next().isEmpty()
                && session.skipped().isEmpty();
        return opening.isEmpty() ? nothingLeft ? End.COMPLETE : how : End.UNSETTLED;
    }

    // ---- asking

    private void ask() {
        if (!opening.isEmpty()) {
            screen.line(opening.peek().words());
            screen.prompt("  confirm, or stop: ");
            return;
        }
        if (doubt != null) {
            screen.line("    " + doubt.words());
            screen.prompt("  confirm, or key it anew: ");
            return;
        }
        Optional<KeyedTask> task = needsPiece() ? Optional.empty() : session.next();
        if (task.isEmpty()) {
            asked = null;
            along.clear();
            screen.prompt(prompts.between(needsPiece()));
            return;
        }
        if (!task.get().equals(asked)) {
            along.clear();
            prompts.heading(shownPiece, Optional.ofNullable(asked), task.get()).forEach(screen::line);
            asked = task.get();
            shownPiece = asked.part();
        }
        screen.prompt(prompts.of(task.get(), along.size()));
    }

    /** By piece, the next one is named when the last is done; by characteristic, all are named before the first is measured. */
    private boolean needsPiece() {
        return !session.isClosed()
                && (session.order() == KeyedOrder.CHARACTERISTIC
                        || session.next().isEmpty());
    }

    // ---- taking

    private void take(String text) throws IOException {
        Optional<Word> word = Word.of(text);
        boolean confirms = word.filter(given -> given == Word.CONFIRM).isPresent();
        if (!opening.isEmpty()) {
            if (confirms) {
                opening.remove().onConfirm().take();
            } else {
                screen.line("    Nothing is measured before this is settled.");
            }
            return;
        }
        Question question = doubt;
        doubt = null;
        if (question != null && confirms) {
            question.onConfirm().take();
        } else if (word.isPresent()) {
            order(word.get(), Word.behind(text));
        } else if (needsPiece()) {
            piece(text);
        } else if (asked != null) {
            value(asked, text);
        } else if (!text.isEmpty()) {
            screen.line("    Nothing is left to measure. add NAME names another piece.");
        }
    }

    private void order(Word word, String behind) throws IOException {
        along.clear();
        switch (word) {
            case ADD -> add(behind);
            case NEXT -> enough();
            case CONFIRM -> screen.line("    There is nothing to confirm.");
            default -> {
                if (orders.carryOut(word, behind, Optional.ofNullable(asked))) {
                    asked = null;
                }
            }
        }
    }

    /** Ends a repeated characteristic, where one reading at least is there; otherwise there is only skip. */
    private void enough() throws IOException {
        if (asked != null && asked.isRepeated() && asked.reading() > 1) {
            session.enough();
        } else {
            screen.line(
                    "    next goes on after the last of several readings of one thing; skip leaves this one unmeasured.");
        }
    }

    private void piece(String name) throws IOException {
        boolean allNamed = name.isEmpty()
                && session.order() == KeyedOrder.CHARACTERISTIC
                && !session.pieces().isEmpty();
        if (allNamed) {
            session.closePieces();
        } else if (!name.isEmpty()) {
            add(name);
        }
    }

    private void add(String name) throws IOException {
        Optional<String> refused = session.refusalOfPiece(name);
        if (refused.isPresent()) {
            screen.line("    Not taken: " + refused.get() + '.');
            return;
        }
        Optional<String> why = new OtherHand(session.plan().part())
                .in(name)
                .map(says -> "The piece " + name + ' ' + says + "; the plan is for " + prompts.ownHand() + '.')
                .or(() -> Optional.of(name)
                        .filter(text -> LIKE_A_VALUE.matcher(text).matches())
                        .map(text -> "The name of a piece is asked for, and " + text + " looks like a value."))
                .or(() -> session.pieces().stream()
                        .filter(name::equalsIgnoreCase)
                        .findFirst()
                        .map(like -> "There is a piece " + like + " already, which differs in capitals only."));
        if (why.isPresent()) {
            doubt = new Question(why.get(), () -> session.addPiece(name));
        } else {
            session.addPiece(name);
        }
    }

    private void value(KeyedTask task, String text) throws IOException {
        if (text.isEmpty()) {
            if (task.isRepeated() && task.reading() > 1) {
                session.enough();
            } else {
                prompts.heading(shownPiece, Optional.empty(), task).forEach(screen::line);
            }
            return;
        }
        if (task.possibleAxes().isEmpty()) {
            check(task, List.of(text), false);
            return;
        }
        List<String> parts = List.of(text.split("\\s+(?=[-+\u2212.\\d])"));
        if (task.axes().isEmpty()) {
            check(task, parts, false);
            return;
        }
        along.addAll(parts);
        if (along.size() >= task.axes().size()) {
            List<String> all = List.copyOf(along);
            along.clear();
            if (all.size() > task.axes().size()) {
                screen.line("    Not taken: " + all.size() + " numbers for " + String.join(", ", task.axes()) + '.');
            } else {
                check(task, all, false);
            }
        }
    }

    private void check(KeyedTask task, List<String> typed, boolean confirmed) throws IOException {
        KeyedCircumstances around = new KeyedCircumstances(settings.time().get(), settings.operator(), confirmed);
        KeyedEntry entry = session.check(task, typed, around);
        if (entry instanceof KeyedEntry.Refused refused) {
            for (Fault fault : refused.faults()) {
                screen.line("    Not taken: " + KeyedReadings.sentence(fault) + '.');
            }
        } else if (entry instanceof KeyedEntry.MarkInDoubt mark) {
            doubt = new Question(
                    mark.typed() + " could mean " + mark.asDecimal() + " or " + mark.asThousands()
                            + "; confirm takes it as " + mark.asDecimal() + '.',
                    () -> checkWithPoint(task, typed, mark));
        } else if (entry instanceof KeyedEntry.Sound sound) {
            sound.notices().stream().filter(told::add).forEach(notice -> screen.line("    note: " + notice));
            judged(sound, typed, confirmed);
        }
    }

    private void checkWithPoint(KeyedTask task, List<String> typed, KeyedEntry.MarkInDoubt doubt) throws IOException {
        List<String> meant = new ArrayList<>(typed);
        meant.set(meant.indexOf(doubt.typed()), doubt.asDecimal());
        if (session.decimalMark() == DecimalMark.COMMA) {
            meant.replaceAll(each -> each.replace('.', ','));
        }
        check(task, meant, false);
    }

    private void judged(KeyedEntry.Sound entry, List<String> typed, boolean confirmed) throws IOException {
        PartRecord piece = with(session.piece(entry.task().part()), entry.reading());
        Judgement judgement = judge.judge(entry.task().characteristic(), piece, entry.reading());
        Optional<Doubt> slip =
                entry.task().characteristic().isJudged() ? plausibility.doubt(piece, judgement) : Optional.empty();
        Optional<String> question =
                slip.map(Doubt::sentence).or(() -> finer(entry)).or(() -> clock(entry.reading()));
        if (question.isPresent() && !confirmed) {
            doubt = new Question(question.get() + '.', () -> check(entry.task(), typed, true));
            return;
        }
        session.keep(entry);
        if (entry.reading() instanceof Reading.Measured measured && finer(entry).isPresent()) {
            finerConfirmed.add(finerKey(measured));
        }
        screen.verdict(
                entry.task().characteristic().isJudged() ? judgement.verdict() : Verdict.NOT_MEASURED,
                Found.verdict(entry.task().characteristic(), judgement),
                prompts.strip(entry.task().characteristic()));
        String bonus = Found.bonus(judgement);
        if (!bonus.isEmpty()) {
            screen.line("      " + bonus);
        }
        Found.corrected(judgement).ifPresent(corrected -> screen.line("      " + corrected));
    }

    /** A gauge cannot show what is finer than its resolution: another was used, or a digit was keyed too many. */
    private Optional<String> finer(KeyedEntry.Sound entry) {
        if (!(entry.reading() instanceof Reading.Measured measured) || finerConfirmed.contains(finerKey(measured))) {
            return Optional.empty();
        }
        return tooCoarse(measured)
                .map(gauge -> Found.value(measured) + " is finer than gauge " + gauge.id() + " shows, whose step is "
                        + gauge.resolution().orElseThrow().toPlainString() + " "
                        + gauge.unit().word());
    }

    /** The gauge of a reading, if its step is greater than what was read. */
    private Optional<Gauge> tooCoarse(Reading.Measured measured) {
        return measured.context()
                .gauge()
                .flatMap(session.plan()::gauge)
                .filter(gauge -> measured.offsets().isEmpty()
                        && gauge.unit() == measured.unit()
                        && gauge.resolution()
                                .filter(step -> isFiner(measured.value(), step))
                                .isPresent());
    }

    /** What finer value was kept in an earlier session was confirmed there; nobody is asked twice. */
    private void rememberFiner() {
        for (PartRecord piece : session.record().parts()) {
            piece.readings()
                    .values()
                    .forEach(readings -> readings.forEach(reading -> {
                        if (reading instanceof Reading.Measured measured
                                && tooCoarse(measured).isPresent()) {
                            finerConfirmed.add(finerKey(measured));
                        }
                    }));
        }
    }

    private static boolean isFiner(BigDecimal value, BigDecimal step) {
        return value.stripTrailingZeros().scale() > step.stripTrailingZeros().scale();
    }

    private static String finerKey(Reading.Measured measured) {
        return measured.characteristic() + '\n' + measured.context().gauge().orElse("");
    }

    /** Times order the readings of a batch; a clock that was set back since the last one would shuffle them. */
    private Optional<String> clock(Reading reading) {
        Optional<LocalDateTime> before =
                session.last().flatMap(last -> last.context().time());
        Optional<LocalDateTime> now = reading.context().time();
        if (before.isEmpty()
                || now.isEmpty()
                || !now.get().isBefore(before.get())
                || !told.add("clock " + before.get())) {
            return Optional.empty();
        }
        return Optional.of("The clock says " + now.get() + ", which is before the reading kept last (" + before.get()
                + "); readings are put in the order of their times. Put the clock right, or confirm");
    }

    private static PartRecord with(PartRecord piece, Reading reading) {
        List<Reading> all = new ArrayList<>();
        piece.readings().values().forEach(all::addAll);
        all.add(reading);
        return new PartRecord(piece.serial(), all);
    }
}
