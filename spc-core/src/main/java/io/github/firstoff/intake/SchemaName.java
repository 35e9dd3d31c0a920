package io.github.firstoff.intake;

import java.util.Optional;

/** Checks the name of the schema that a document says it follows. */
final class SchemaName {
    private SchemaName() {}

    static void check(Fields document, String wanted) {
        // Editors note the place of a schema there; it says nothing to this program.
        document.value("$schema");
        Optional<String> stated = document.requiredText("schema", Echo.quoted(wanted));
        if (stated.isPresent() && !stated.get().equals(wanted)) {
            document.refuse(
                    "schema",
                    FaultKind.WRONG_SCHEMA,
                    message(stated.get(), wanted),
                    Echo.quoted(stated.get()),
                    Echo.quoted(wanted));
        }
    }

    private static String message(String stated, String wanted) {
        String kind = kindOf(stated);
        if (!kind.isEmpty() && kind.equals(kindOf(wanted))) {
            return "this is another version of the format than this program reads";
        }
        return kind.isEmpty()
                ? ""
                : "this is " + article(kind) + kind + ", not " + article(kindOf(wanted)) + kindOf(wanted);
    }

    private static String article(String kind) {
        return kind.startsWith("a") ? "an " : "a ";
    }

    private static String kindOf(String schema) {
        for (String kind : new String[] {"plan", "job", "readings", "assembly", "stack", "house", "mapping"}) {
            if (schema.startsWith("firstoff-" + kind + "-")) {
                return kind;
            }
        }
        return "";
    }
}
