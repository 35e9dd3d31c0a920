package io.github.firstoff.intake;

import java.util.Locale;

/**
 * The formats in which readings arrive, recognised by how they begin, whatever the file is called. The first that recognises the
 * beginning reads the file.
 */
public enum ReadingFormat {
    /** A workbook of OpenDocument (ISO/IEC 26300). */
    ODS(new WorkbookReadings(true)),
    /** A workbook of Office Open XML (ECMA-376), and any other zip file or workbook, which is refused by name. */
    XLSX(new WorkbookReadings(false)),
    /** Results of ISO 23952 (QIF 3.0), an XML document. */
    QIF(new QifReadings()),
    /** A JSON object in each line. */
    JSON_LINES(new JsonLines()),
    /** A JSON document with a list of readings. */
    JSON(new JsonReadings()),
    /** Lines of a measuring machine, understood by a mapping; taken for a text that is none of those above where there is one. */
    MAPPED(new MappedReadings()),
    /** Delimited text, long or wide; anything that is none of the others. */
    CSV(new CsvReadings());

    private final ReadingSource source;

    ReadingFormat(ReadingSource source) {
        this.source = source;
    }

    /** What reads the format. */
    ReadingSource source() {
        return source;
    }

    /** The word for the format, in lower case. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The format of an input that begins like this. */
    static ReadingFormat recognise(Beginning beginning) {
        for (ReadingFormat format : values()) {
            if (format.source.recognises(beginning)) {
                return format;
            }
        }
        return CSV;
    }
}
