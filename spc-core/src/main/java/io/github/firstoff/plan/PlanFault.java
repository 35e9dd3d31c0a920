package io.github.firstoff.plan;

import java.util.Optional;

/**
 * One thing in a plan that contradicts itself or cannot be resolved.
 *
 * @param characteristic the number of the characteristic it is about; empty if about the plan as a whole
 * @param field the plan file's name of the field at fault, for example {@code requirement}
 * @param message what is wrong
 * @param expected what would be understood; may be empty
 * @param position the zero-based place within the field's text, where the fault has one
 */
public record PlanFault(
        Optional<String> characteristic, String field, String message, String expected, Optional<Integer> position) {

    /** A fault of one characteristic's field. */
    public static PlanFault of(String characteristic, String field, String message, String expected) {
        return new PlanFault(Optional.of(characteristic), field, message, expected, Optional.empty());
    }
}
