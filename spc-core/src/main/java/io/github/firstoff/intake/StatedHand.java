package io.github.firstoff.intake;

import io.github.firstoff.plan.Hand;
import java.util.Arrays;
import java.util.Optional;

/** The hand that a file states, of the whole and of its members. */
final class StatedHand {
    private static final String FIELD = "hand";

    private StatedHand() {}

    /** The hand that these fields state; a word that names none is refused. */
    static Optional<Hand> of(Fields fields) {
        return fields.word(
                FIELD, Hand::parse, Arrays.stream(Hand.values()).map(Hand::word).toList());
    }

    /**
     * The hand of a member, refused if the whole is of the other side.
     *
     * @param whole what the member belongs to: {@code the assembly}
     * @param ofWhole its hand
     */
    static Optional<Hand> ofMember(Fields member, String whole, Optional<Hand> ofWhole) {
        Optional<Hand> own = of(member);
        if (own.isPresent()
                && ofWhole.isPresent()
                && own.get().isLeft() != ofWhole.get().isLeft()) {
            member.refuse(
                    FIELD,
                    FaultKind.OTHER_PART,
                    "the hands are mixed: " + whole + " is for " + ofWhole.get().word(),
                    Echo.quoted(own.get().word()),
                    ofWhole.get().word());
        }
        return own;
    }
}
