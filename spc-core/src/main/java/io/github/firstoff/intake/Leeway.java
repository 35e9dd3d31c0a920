package io.github.firstoff.intake;

import io.github.firstoff.plan.Hand;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What readings may say although the plan they are held against says nothing of it: of a study that wants one size of a part, and not the
 * whole of its plan. Remembers what it let pass.
 */
final class Leeway {
    private final Set<String> others = new LinkedHashSet<>();
    private @Nullable Hand hand;

    /** Lets a characteristic pass that nobody asked for. */
    void passes(String characteristic) {
        others.add(characteristic);
    }

    /** The characteristics that nobody asked for, in the order in which they were met. */
    Set<String> others() {
        return Set.copyOf(others);
    }

    /** Lets a hand pass where none is stated; false if an earlier row has the other. */
    boolean passes(Hand stated) {
        if (hand == null) {
            hand = stated;
        }
        return hand.isLeft() == stated.isLeft();
    }

    /** The hand that the readings state. */
    Optional<Hand> hand() {
        return Optional.ofNullable(hand);
    }
}
