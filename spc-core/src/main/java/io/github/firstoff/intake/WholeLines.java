package io.github.firstoff.intake;

import java.util.Arrays;

/** The lines of a file of readings that somebody is still writing: its last line may be cut anywhere. */
public final class WholeLines {
    private WholeLines() {}

    /**
     * How many of the bytes are whole lines, by the format and the encoding that the bytes show.
     *
     * @param bytes a file of readings as far as it is written
     * @return the bytes up to the last line end, with it; all of them where a reading is no line: in a workbook, QIF or a JSON document
     */
    public static int length(byte[] bytes) {
        Beginning beginning = Beginning.of(
                Arrays.copyOf(bytes, Math.min(bytes.length, Beginning.MOST)), bytes.length <= Beginning.MOST);
        if (!ReadingFormat.recognise(beginning).source().isOfLines()) {
            return bytes.length;
        }
        // A line end has two bytes in UTF-16, and one of a pair may be that of a line end by chance.
        TextEncoding encoding = beginning.encoding();
        byte[] end = "\n".getBytes(encoding.charset());
        int length = bytes.length - bytes.length % end.length;
        while (length > 0 && !Arrays.equals(bytes, length - end.length, length, end, 0, end.length)) {
            length -= end.length;
        }
        return length;
    }
}
