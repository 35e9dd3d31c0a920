package io.github.firstoff.study.drift;

import io.github.firstoff.remark.Remark;
import io.github.firstoff.stats.LineBreaks;
import java.util.Optional;

/**
 * Where a stretch of the process begins that may follow another line than the one before.
 *
 * @param reading its first reading, from 0
 * @param cause how it is known
 * @param name what the stretch is called, for example {@code tool T2}; not empty
 * @param why what was done or found, as a clause, for example {@code the tool changes from T1 to T2}; not empty
 * @param evidence what shows it, where it was detected
 */
public record Start(int reading, Cause cause, Remark name, Remark why, Optional<LineBreaks.Change> evidence) {
    /** Refuses blank words. */
    public Start {
        if (reading < 0 || name.isEmpty() || why.isEmpty()) {
            throw new IllegalArgumentException("a stretch begins with a reading and has a label and a reason");
        }
    }

    /** A start that somebody stated. */
    public static Start stated(int reading, Cause cause, Remark name, Remark why) {
        return new Start(reading, cause, name, why, Optional.empty());
    }

    /** What the stretch is called, in English. */
    public String label() {
        return name.english();
    }

    /** What was done or found, in English. */
    public String reason() {
        return why.english();
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
