package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.remark.Remark;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;

/** A workbook as OpenDocument stores it (ISO/IEC 26300, .ods): all its sheets in one part, read tag by tag. */
final class OdsWorkbook implements Workbook {
    static final String TYPE = "application/vnd.oasis.opendocument.spreadsheet";
    private static final String CONTENT = "content.xml";
    private static final String MANIFEST = "META-INF/manifest.xml";
    private static final long MOST_OF_CONTENT = 2L << 30;
    private static final long MOST_OF_MANIFEST = 16L << 20;
    private static final int MOST_STYLES = 20_000;

    private final String file;
    private final ZipFile zip;
    private final List<Remark> notices;

    private OdsWorkbook(String file, ZipFile zip, List<Remark> notices) {
        this.file = file;
        this.zip = zip;
        this.notices = notices;
    }

    /** Opens a workbook whose list of contents was looked at before. */
    static OdsWorkbook open(String file, Path path, ZipDirectory directory) throws IOException {
        boolean macros =
                directory.names().stream().anyMatch(name -> name.startsWith("Basic/") || name.startsWith("Scripts/"));
        ZipFile zip;
        try {
            zip = new ZipFile(path.toFile());
        } catch (ZipException fault) {
            throw damaged(file, "its list of contents cannot be read");
        }
        OdsWorkbook workbook = new OdsWorkbook(
                file,
                zip,
                macros
                        ? List.of(Remark.of("notice.macros", "the workbook holds macros, which were not run"))
                        : List.of());
        try {
            workbook.requireReadable();
            return workbook;
        } catch (IOException fault) {
            workbook.close();
            throw fault;
        }
    }

    private static TextRefused damaged(String file, String why) {
        return new TextRefused(Fault.of(
                FaultKind.SYNTAX,
                Where.inFile(file),
                "the workbook is damaged: " + why,
                "",
                "a workbook that a spreadsheet saved"));
    }

    private SheetXml xml(String name, long most) throws IOException {
        ZipEntry entry = zip.getEntry(name);
        if (entry == null) {
            throw damaged(file, Echo.quoted(name) + " is not in it");
        }
        InputStream unpacked;
        try {
            unpacked = zip.getInputStream(entry);
        } catch (ZipException fault) {
            throw damaged(file, "what is packed in it cannot be unpacked");
        }
        return new SheetXml(Where.inFile(file), BoundedPart.checked(file, unpacked, most, entry));
    }

    /** Parts that are locked with a password are named in the manifest (ISO/IEC 26300-3, 4.4). */
    private void requireReadable() throws IOException {
        if (zip.getEntry(MANIFEST) == null) {
            return;
        }
        try (SheetXml xml = xml(MANIFEST, MOST_OF_MANIFEST)) {
            SheetXml.Event event = xml.next();
            while (event != SheetXml.Event.FINISH) {
                if (event == SheetXml.Event.START && xml.name().equals("encryption-data")) {
                    throw WorkbookFile.locked(file);
                }
                event = xml.next();
            }
        }
    }

    @Override
    public List<Remark> notices() {
        return notices;
    }

    @Override
    public void walk(SheetTaker taker) throws IOException {
        try (SheetXml xml = xml(CONTENT, MOST_OF_CONTENT)) {
            walk(file, xml, taker);
        }
    }

    /** Walks through the part that holds all sheets. */
    static void walk(String file, SheetXml xml, SheetTaker taker) throws IOException {
        Set<String> hiddenStyles = new HashSet<>();
        String style = "";
        boolean any = false;
        SheetXml.Event event = xml.next();
        while (event != SheetXml.Event.FINISH) {
            if (event == SheetXml.Event.START) {
                switch (xml.name()) {
                    case "style" -> style = xml.maybe("name").orElse("");
                    case "table-properties" -> {
                        boolean hides =
                                xml.maybe("display").filter("false"::equals).isPresent();
                        if (hides && hiddenStyles.size() < MOST_STYLES) {
                            hiddenStyles.add(style);
                        }
                    }
                    case "spreadsheet" -> any = true;
                    case "tracked-changes" -> xml.skip();
                    case "table" -> {
                        if (any) {
                            table(file, xml, taker, hiddenStyles);
                        }
                    }
                    default -> {
                        // what lies around the sheets
                    }
                }
            }
            event = xml.next();
        }
        if (!any) {
            throw damaged(file, "it has no sheets");
        }
    }

    private static void table(String file, SheetXml xml, SheetTaker taker, Set<String> hiddenStyles)
            throws IOException {
        String name = xml.maybe("name").orElse("");
        boolean hidden = hiddenStyles.contains(xml.maybe("style-name").orElse(""));
        if (taker.begin(name, hidden)) {
            new OdsSheet(file, name, xml).read(taker);
        } else {
            xml.skip();
        }
    }

    @Override
    public void close() throws IOException {
        zip.close();
    }
}
