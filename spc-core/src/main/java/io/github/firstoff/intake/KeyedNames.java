package io.github.firstoff.intake;

import java.util.Optional;

/** What may be keyed as a name or a remark: nothing that a spreadsheet would reckon with, and nothing that moves a terminal. */
final class KeyedNames {
    private static final int LONGEST_NAME = 200;
    private static final int LONGEST_REMARK = 1900;

    private KeyedNames() {}

    /** Why this cannot be the name of a person or a gauge; empty if it can. */
    static Optional<String> refusalOfName(String text) {
        return refusalOf(text, LONGEST_NAME);
    }

    /** Why this cannot be the name of a piece; empty if it can. */
    static Optional<String> refusalOfPiece(String text) {
        return RowCheck.namesNoPiece(text.strip())
                ? Optional.of(Echo.quoted(text.strip()) + " names no piece; tables call a row about their columns so")
                : refusalOfName(text);
    }

    /** Why this cannot be a remark; empty if it can. */
    static Optional<String> refusalOfRemark(String text) {
        return refusalOf(text, LONGEST_REMARK);
    }

    private static Optional<String> refusalOf(String text, int longest) {
        String stripped = text.strip();
        if (stripped.isEmpty()) {
            return Optional.of("nothing stands there");
        }
        if (stripped.length() > longest) {
            return Optional.of("it has " + stripped.length() + " characters, more than " + longest);
        }
        int harmful = Echo.firstHarmful(stripped);
        if (harmful >= 0) {
            return Optional.of("it holds " + Echo.character(stripped.charAt(harmful)));
        }
        return KeyedRow.formulaIn(stripped);
    }
}
