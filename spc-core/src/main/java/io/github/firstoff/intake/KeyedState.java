package io.github.firstoff.intake;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Where a session stands: what its events come to, one after the other. The same events always come to the same state, which is what
 * makes a session go on exactly where it stood.
 */
final class KeyedState {
    /** The version of the journal that this program writes and reads. */
    static final String VERSION = "firstoff-keyed-1";

    private @Nullable KeyedEvent begin;
    private String plan = "";
    private KeyedOrder order = KeyedOrder.PIECE;
    private final Set<String> pieces = new LinkedHashSet<>();
    private boolean closed;
    private final List<Act> acts = new ArrayList<>();
    private final List<String> rows = new ArrayList<>();
    private final Map<String, String> gauges = new LinkedHashMap<>();
    private String remark = "";
    private String temperature = "";
    private String size = "";
    private int repeats;
    private DecimalMark mark = DecimalMark.POINT;

    /** What can be undone. */
    sealed interface Act permits Kept, Passed, Named {}

    /** A piece that was named. */
    record Named(String part) implements Act {}

    /**
     * A reading that was kept.
     *
     * @param remark the remark that went with it
     */
    record Kept(KeyedSubject subject, String remark) implements Act {}

    /**
     * Something that was passed over.
     *
     * @param skipped whether it is still to be measured
     */
    record Passed(KeyedSubject subject, boolean skipped) implements Act {}

    /** An event that does not follow from the state before it: the journal was not written by this program as it stands. */
    static final class Impossible extends Exception {
        private static final long serialVersionUID = 1L;

        Impossible(String message) {
            super(message);
        }
    }

    boolean hasBegun() {
        return begin != null;
    }

    private KeyedEvent begun() {
        if (begin == null) {
            throw new IllegalStateException("a session was asked before it had begun");
        }
        return begin;
    }

    String partNumber() {
        return begun().field(2);
    }

    String revision() {
        return begun().field(3);
    }

    String heading() {
        return begun().field(4);
    }

    String plan() {
        return plan;
    }

    KeyedOrder order() {
        return order;
    }

    List<String> pieces() {
        return List.copyOf(pieces);
    }

    boolean isClosed() {
        return closed;
    }

    List<Act> acts() {
        return List.copyOf(acts);
    }

    List<String> rows() {
        return List.copyOf(rows);
    }

    Optional<String> gauge(String characteristic) {
        return Optional.ofNullable(gauges.get(characteristic));
    }

    String remark() {
        return remark;
    }

    String temperature() {
        return temperature;
    }

    String size() {
        return size;
    }

    int repeats() {
        return repeats;
    }

    DecimalMark mark() {
        return mark;
    }

    /** The whole readings file as it must be. */
    byte[] file() {
        if (begin == null) {
            return new byte[0];
        }
        StringBuilder text = new StringBuilder(heading()).append('\n');
        rows.forEach(row -> text.append(row).append('\n'));
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    void apply(KeyedEvent event) throws Impossible {
        if ((begin == null) != (event.kind() == KeyedEvent.Kind.BEGIN)) {
            throw new Impossible("a journal begins with \"begin\", once");
        }
        switch (event.kind()) {
            case BEGIN -> {
                if (!event.field(0).equals(VERSION)) {
                    throw new Impossible(
                            "it is of version " + Echo.quoted(event.field(0)) + ", and this program reads " + VERSION);
                }
                begin = event;
                plan = event.field(1);
                order = order(event.field(5));
            }
            case PLAN -> plan = event.field(0);
            case ORDER -> order = order(event.field(0));
            case PIECE -> {
                pieces.add(event.field(0));
                acts.add(new Named(event.field(0)));
            }
            case GIVEN -> pieces.add(event.field(0));
            case CLOSED -> closed = true;
            case READING -> {
                acts.add(new Kept(subject(event), remark));
                rows.add(event.field(3));
                remark = "";
            }
            case AMEND -> {
                if (rows.isEmpty()) {
                    throw new Impossible("there is no row to amend");
                }
                rows.set(rows.size() - 1, event.field(0));
            }
            case SKIP -> acts.add(new Passed(subject(event), true));
            case NEXT -> acts.add(new Passed(subject(event), false));
            case UNDO -> undo();
            case AGAIN -> acts.removeIf(act -> act instanceof Passed passed && passed.skipped());
            case REMARK -> remark = event.field(0);
            case GAUGE -> gauges.put(event.field(0), event.field(1));
            case TEMPERATURE -> temperature = event.field(0);
            case SIZE -> size = event.field(0);
            case REPEATS -> repeats = repeats(event.field(0));
            case MARK -> mark = mark(event.field(0));
        }
    }

    private void undo() throws Impossible {
        if (acts.isEmpty()) {
            throw new Impossible("there is nothing to undo");
        }
        Act last = acts.remove(acts.size() - 1);
        if (last instanceof Named named) {
            pieces.remove(named.part());
        } else if (last instanceof Kept kept) {
            rows.remove(rows.size() - 1);
            if (remark.isEmpty()) {
                remark = kept.remark();
            }
        }
    }

    private static KeyedSubject subject(KeyedEvent event) {
        return new KeyedSubject(event.field(0), event.field(1), event.field(2));
    }

    private static int repeats(String times) throws Impossible {
        if (!times.matches("\\d{1,9}")) {
            throw new Impossible("nothing is measured " + Echo.quoted(times) + " times");
        }
        return Integer.parseInt(times);
    }

    private static DecimalMark mark(String word) throws Impossible {
        for (DecimalMark mark : DecimalMark.values()) {
            if (mark.word().equals(word)) {
                return mark;
            }
        }
        throw new Impossible("there is no decimal mark " + Echo.quoted(word));
    }

    private static KeyedOrder order(String word) throws Impossible {
        return KeyedOrder.parse(word).orElseThrow(() -> new Impossible("there is no order by " + Echo.quoted(word)));
    }
}
