package io.github.firstoff.intake;

import io.github.firstoff.inspection.Reading;
import java.util.List;

/** What came of keying something. */
public sealed interface KeyedEntry permits KeyedEntry.Sound, KeyedEntry.Refused, KeyedEntry.MarkInDoubt {

    /**
     * It is a reading of what was asked and can be kept.
     *
     * @param task what it is of
     * @param reading the reading
     * @param notices what should be known
     * @param row how it will stand in the readings file
     */
    record Sound(KeyedTask task, Reading reading, List<String> notices, String row) implements KeyedEntry {
        /** Copies the list. */
        public Sound {
            notices = List.copyOf(notices);
        }
    }

    /**
     * It cannot be understood, for the same reasons for which a file with it would be refused.
     *
     * @param faults the reasons
     */
    record Refused(List<Fault> faults) implements KeyedEntry {
        /** Copies the list. */
        public Refused {
            faults = List.copyOf(faults);
        }
    }

    /**
     * A mark among the digits could be the decimal mark or part the thousands off.
     *
     * @param typed what was typed
     * @param asDecimal what it says if it is the decimal mark, to be keyed in its place
     * @param asThousands what it says otherwise
     */
    record MarkInDoubt(String typed, String asDecimal, String asThousands) implements KeyedEntry {}
}
