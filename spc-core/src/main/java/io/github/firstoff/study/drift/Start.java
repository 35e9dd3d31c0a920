package io.github.firstoff.study.drift;

import io.github.firstoff.stats.LineBreaks;
import java.util.Optional;

/**
 * Where a stretch of the process begins that may follow another line than the one before.
 *
 * @param reading its first reading, from 0
 * @param cause how it is known
 * @param label what the stretch is called, for example {@code tool T2}; not blank
 * @param reason what was done or found, as a clause, for example {@code the tool changes from T1 to T2}; not blank
 * @param evidence what shows it, where it was detected
 */
public record Start(int reading, Cause cause, String label, String reason, Optional<LineBreaks.Change> evidence) {
    /** Refuses blank words. */
    public Start {
        if (reading < 0 || label.isBlank() || reason.isBlank()) {
            throw new IllegalArgumentException("a stretch begins with a reading and has a label and a reason");
        }
    }

    /** A start that somebody stated. */
    public static Start stated(int reading, Cause cause, String label, String reason) {
        return new Start(reading, cause, label, reason, Optional.empty());
    }

    /** How a start is known. */
    public enum Cause {
        /** The first reading of all. */
        FIRST("first"),
        /** The readings state another tool, phase or offset. */
        STATED("stated"),
        /** A change point that the readings show. */
        DETECTED("detected");

        private final String word;

        Cause(String word) {
            this.word = word;
        }

        /** The word in results. */
        public String word() {
            return word;
        }
    }
}
