package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.io.Reader;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The text of an XML file by the encoding that its declaration states (XML 1.0, 4.3.3), held against what its bytes show. */
final class QifText {
    private static final Pattern DECLARED = Pattern.compile(
            "^\\s*<\\?xml\\b[^>]{0,200}?\\bencoding\\s*=\\s*[\"']([A-Za-z][A-Za-z0-9._\\-]{0,40})[\"']");
    private static final Pattern WEB_PAGE = Pattern.compile("(?i)^\\s*<(?:!doctype\\s+)?html\\b");
    private static final List<String> UTF_8 = List.of("utf-8", "utf8", "us-ascii", "ascii");
    private static final List<String> UTF_16 = List.of("utf-16", "utf-16le", "utf-16be", "ucs-2", "iso-10646-ucs-2");
    private static final List<String> ONE_BYTE = List.of("windows-1252", "cp1252", "iso-8859-1", "latin1");

    private QifText() {}

    /**
     * The text.
     *
     * @throws TextRefused if its bytes are of another encoding than it says, or of one that is not understood
     */
    static Reader of(InputBytes bytes) throws TextRefused {
        Beginning beginning = bytes.beginning();
        if (WEB_PAGE.matcher(beginning.text()).find()) {
            throw new TextRefused(Fault.of(
                    FaultKind.WRONG_FORMAT,
                    Where.inFile(bytes.input().name()),
                    "",
                    "a web page",
                    "the file itself; it was perhaps saved from a page that asked for a name and password"));
        }
        Matcher matcher = DECLARED.matcher(beginning.text());
        String declared = matcher.find() ? matcher.group(1) : "";
        String folded = declared.toLowerCase(Locale.ROOT);
        boolean wide = beginning.encoding() == TextEncoding.UTF_16_LE || beginning.encoding() == TextEncoding.UTF_16_BE;
        if (wide ? UTF_8.contains(folded) || ONE_BYTE.contains(folded) : UTF_16.contains(folded)) {
            throw new TextRefused(Fault.of(
                    FaultKind.CONTRADICTION,
                    new Where(bytes.input().name(), 1, 0, ""),
                    "the file says that it is in another encoding than it is",
                    "encoding=" + Echo.quoted(declared) + " over text in " + (wide ? "UTF-16" : "UTF-8 or the like"),
                    "the true encoding"));
        }
        if (wide || ONE_BYTE.contains(folded)) {
            return TextReader.of(bytes);
        }
        if (!folded.isEmpty() && !UTF_8.contains(folded)) {
            throw new TextRefused(Fault.of(
                    FaultKind.WRONG_FORMAT,
                    new Where(bytes.input().name(), 1, 0, ""),
                    "",
                    "encoding=" + Echo.quoted(declared),
                    "UTF-8, UTF-16 or Windows-1252"));
        }
        return TextReader.utf8(bytes);
    }
}
