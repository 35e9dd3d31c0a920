package io.github.firstoff.sheet;

import io.github.firstoff.remark.Remark;
import java.util.List;

/** What every sheet tells beside its own subject: where it comes from, and what should be known of its inputs. */
public interface Told {
    /** What it was made from and by. */
    Provenance provenance();

    /** What a reader should know of the inputs. */
    List<Remark> remarks();

    /** The same, in English. */
    default List<String> notices() {
        return Remark.english(remarks());
    }
}
