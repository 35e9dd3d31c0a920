package io.github.firstoff.intake;

import io.github.firstoff.remark.Remark;
import java.io.IOException;

/** A workbook that is open. It can be walked more than once. */
interface Workbook extends AutoCloseable {

    /** Hands on sheets and rows in their order, as far as they are wanted. */
    void walk(SheetTaker taker) throws IOException;

    /** Notices of the workbook as a whole, such as macros that were not run. */
    java.util.List<Remark> notices();

    @Override
    void close() throws IOException;
}
