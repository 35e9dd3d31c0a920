package io.github.firstoff.intake;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.poi.ss.usermodel.DateUtil;

/**
 * What the formats of a workbook's cells make of a number: a number, or a day with or without a time (ECMA-376-1:2016, 18.8.30 and
 * 18.8.31).
 */
final class XlsxStyles {
    private static final int MOST = 100_000;
    private static final int LONGEST = 1000;

    private final List<Shows> ofCell = new ArrayList<>();

    /** What a number in a cell of a format is. */
    enum Shows {
        /** A number. */
        NUMBER,
        /** A day. */
        DATE,
        /** A day and a time. */
        DATE_AND_TIME,
        /** A time of day alone, or a duration. */
        TIME_OF_DAY
    }

    /** What a cell of a style shows; a style that the workbook does not have changes nothing. */
    Shows of(int style) {
        return style >= 0 && style < ofCell.size() ? ofCell.get(style) : Shows.NUMBER;
    }

    static XlsxStyles read(SheetXml xml) throws IOException {
        XlsxStyles styles = new XlsxStyles();
        Map<Integer, String> codes = new HashMap<>();
        boolean cells = false;
        SheetXml.Event event = xml.next();
        while (event != SheetXml.Event.FINISH) {
            if (event == SheetXml.Event.START) {
                switch (xml.name()) {
                    case "numFmt" -> {
                        String code = xml.maybe("formatCode").orElse("");
                        if (codes.size() < MOST && code.length() <= LONGEST) {
                            codes.put(number(xml.maybe("numFmtId").orElse("")), code);
                        }
                    }
                    case "cellXfs" -> cells = true;
                    case "xf" -> {
                        if (cells && styles.ofCell.size() < MOST) {
                            int id = number(xml.maybe("numFmtId").orElse(""));
                            styles.ofCell.add(shows(id, codes.getOrDefault(id, "")));
                        }
                    }
                    default -> {
                        // everything else is how it looks
                    }
                }
            } else if (event == SheetXml.Event.END && xml.name().equals("cellXfs")) {
                cells = false;
            }
            event = xml.next();
        }
        return styles;
    }

    private static int number(String text) {
        return text.matches("\\d{1,9}") ? Integer.parseInt(text) : -1;
    }

    /** The formats that every workbook has by number alone, and those of East Asian editions, come before any code. */
    static Shows shows(int id, String code) {
        if (code.isEmpty()) {
            if ((id >= 14 && id <= 17) || (id >= 27 && id <= 31) || id == 36 || (id >= 50 && id <= 58)) {
                return Shows.DATE;
            }
            if ((id >= 18 && id <= 21) || (id >= 32 && id <= 35) || (id >= 45 && id <= 47)) {
                return Shows.TIME_OF_DAY;
            }
            return id == 22 ? Shows.DATE_AND_TIME : Shows.NUMBER;
        }
        if (!DateUtil.isADateFormat(id, code)) {
            return Shows.NUMBER;
        }
        String bare = code.toLowerCase(Locale.ROOT)
                .replaceAll("\\\\.", "")
                .replaceAll("\"[^\"]*+\"?", "")
                .replaceAll("\\[\\$[^\\]]*+\\]", "");
        boolean day = bare.indexOf('y') >= 0 || bare.indexOf('d') >= 0;
        boolean time = bare.indexOf('h') >= 0 || bare.indexOf('s') >= 0;
        if (day) {
            return time ? Shows.DATE_AND_TIME : Shows.DATE;
        }
        return time ? Shows.TIME_OF_DAY : Shows.DATE;
    }
}
