package io.github.firstoff.sheet;

import io.github.firstoff.inspection.Reading.Context;
import io.github.firstoff.remark.Remark;
import java.util.Optional;
import java.util.function.Function;

/** What readings may state beside their value, by the name of its column: what subgroups and breaks are made by. */
enum ContextColumn {
    SUBGROUP("subgroup", Context::subgroup),
    OPERATOR("operator", Context::operator),
    MACHINE("machine", Context::machine),
    GAUGE("gauge", Context::gauge),
    TOOL("tool", context -> context.production().tool()),
    PHASE("phase", context -> context.production().phase()),
    /** As written, but for trailing zeros: 0.10 and 0.1 are one offset. */
    OFFSET(
            "offset",
            context -> context.production()
                    .offset()
                    .map(offset -> offset.signum() == 0
                            ? "0"
                            : offset.stripTrailingZeros().toPlainString()));

    private final String word;
    private final Function<Context, Optional<String>> content;

    ContextColumn(String word, Function<Context, Optional<String>> content) {
        this.word = word;
        this.content = content;
    }

    /** The column's name in plans and readings. */
    String word() {
        return word;
    }

    /** The column's name on a sheet. */
    Remark remark() {
        return Remark.word("context", word);
    }

    /** What a reading states there; empty if nothing. */
    Optional<String> of(Context context) {
        return content.apply(context);
    }

    /** The column of that name. */
    static ContextColumn named(String name) {
        for (ContextColumn column : values()) {
            if (column.word.equals(name)) {
                return column;
            }
        }
        throw new IllegalArgumentException("no column is called " + name);
    }
}
