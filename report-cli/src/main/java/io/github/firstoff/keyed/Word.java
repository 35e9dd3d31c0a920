package io.github.firstoff.keyed;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What can be typed instead of a value. */
enum Word {
    /** Takes the last step back. */
    UNDO("undo", "takes the last value, skip or piece back; undo once more the one before it"),
    /** Leaves the value unmeasured. */
    SKIP("skip", "leaves this one unmeasured for now"),
    /** Comes back to what was skipped. */
    AGAIN("again", "comes back to everything that was skipped"),
    /** Goes on after several readings. */
    NEXT("next", "goes on after several readings of one thing; so does an empty line"),
    /** Puts a remark. */
    REMARK("remark", "remark TEXT goes with the value asked for, remark last TEXT with the one kept last", "note"),
    /** Chooses a gauge. */
    GAUGE("gauge", "gauge ID is used for this characteristic from now on; gauge alone lists them"),
    /** States a temperature. */
    TEMPERATURE("temperature", "temperature 23.5 goes with the lengths that follow, in °C; temperature off ends that"),
    /** States on how much nonconformities are counted. */
    SIZE("size", "size 2.5 goes with the counts of nonconformities that follow: an area, a length, a number of pieces"),
    /** Names another piece. */
    ADD("add", "add NAME names another piece"),
    /** Lists. */
    LIST("list", "shows this piece, or this characteristic, and what is left"),
    /** Draws. */
    CHART("chart", "draws the last readings of this characteristic against its limits"),
    /** Confirms. */
    CONFIRM("confirm", "says that what is questioned is right"),
    /** Ends. */
    STOP("stop", "ends; the same command goes on later", "quit", "exit", "end"),
    /** Helps. */
    HELP("help", "shows this", "?");

    private final String word;
    private final String does;
    private final List<String> others;

    Word(String word, String does, String... others) {
        this.word = word;
        this.does = does;
        this.others = List.of(others);
    }

    /** The word to type. */
    String word() {
        return word;
    }

    /** What it does. */
    String does() {
        return does;
    }

    /** The word that a line begins with; empty if it begins with none. Only some have more behind them. */
    static Optional<Word> of(String line) {
        String first = line.split("\\s+", 2)[0].toLowerCase(Locale.ROOT);
        return Arrays.stream(values())
                .filter(each -> each.word.equals(first) || each.others.contains(first))
                .filter(each -> each.takesText() || behind(line).isEmpty())
                .findFirst();
    }

    private boolean takesText() {
        return this == REMARK || this == GAUGE || this == TEMPERATURE || this == SIZE || this == ADD;
    }

    /** What stands behind the first word. */
    static String behind(String line) {
        String[] parts = line.split("\\s+", 2);
        return parts.length == 2 ? parts[1].strip() : "";
    }
}
