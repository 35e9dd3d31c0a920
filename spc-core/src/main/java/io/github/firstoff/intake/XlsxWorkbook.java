package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import io.github.firstoff.remark.Remark;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.poi.openxml4j.exceptions.OpenXML4JException;
import org.apache.poi.openxml4j.exceptions.OpenXML4JRuntimeException;
import org.apache.poi.openxml4j.opc.OPCPackage;
import org.apache.poi.openxml4j.opc.PackageAccess;
import org.apache.poi.openxml4j.opc.PackagePart;
import org.apache.poi.openxml4j.opc.PackageRelationship;
import org.apache.poi.openxml4j.opc.PackageRelationshipTypes;
import org.apache.poi.openxml4j.opc.TargetMode;
import org.apache.poi.openxml4j.opc.ZipPackagePart;

/**
 * A workbook as Office Open XML stores it (ECMA-376, .xlsx and .xlsm), transitional or strict. The library finds the parts of the package;
 * their text is read here, tag by tag, because only so a number is taken as the decimal that stands in the file, and no part is ever
 * whole in memory.
 */
final class XlsxWorkbook implements Workbook {
    private static final long MOST_OF_A_SHEET = 1L << 30;
    private static final long MOST_OF_A_PART = 256L << 20;
    private static final int MOST_SHEETS = 500;
    private static final String TRANSITIONAL = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";
    private static final String STRICT = "http://purl.oclc.org/ooxml/officeDocument/relationships/";

    private final String file;
    private final OPCPackage opened;
    private final List<Sheet> sheets = new ArrayList<>();
    private final List<Remark> notices = new ArrayList<>();
    private final SharedTexts texts;
    private XlsxStyles styles = new XlsxStyles();
    private boolean from1904;

    /** A sheet in the list of the workbook. */
    private record Sheet(String name, boolean hidden, PackagePart part) {}

    private XlsxWorkbook(String file, OPCPackage opened) {
        this.file = file;
        this.opened = opened;
        this.texts = new SharedTexts(Where.inFile(file));
    }

    /** Opens a workbook whose list of contents was looked at before. */
    static XlsxWorkbook open(String file, Path zip) throws IOException {
        try {
            XlsxWorkbook workbook = new XlsxWorkbook(file, OPCPackage.open(zip.toFile(), PackageAccess.READ));
            try {
                workbook.index();
                return workbook;
            } catch (IOException | OpenXML4JException | OpenXML4JRuntimeException fault) {
                workbook.close();
                throw fault;
            }
        } catch (OpenXML4JException | OpenXML4JRuntimeException fault) {
            throw damaged(file);
        } catch (IllegalArgumentException | IllegalStateException fault) {
            // What the library makes of names and addresses that no package may have.
            throw damaged(file);
        }
    }

    private static TextRefused damaged(String file) {
        return new TextRefused(Fault.of(
                FaultKind.SYNTAX,
                Where.inFile(file),
                "the workbook is damaged: its parts do not fit together",
                "",
                "a workbook that a spreadsheet saved"));
    }

    private void index() throws IOException, OpenXML4JException {
        PackagePart main = main();
        String type = main.getContentType().toLowerCase(Locale.ROOT);
        boolean binary = type.contains("sheet.binary");
        boolean sheets = type.contains("sheet.main+xml")
                || type.contains("sheet.macroenabled")
                || type.contains("template.main+xml");
        if (binary || !sheets) {
            throw new TextRefused(Fault.of(
                    FaultKind.WRONG_FORMAT,
                    Where.inFile(file),
                    "",
                    binary ? "a binary workbook (.xlsb)" : "a document that is no workbook",
                    "a workbook with sheets; save it as .xlsx, .ods or CSV"));
        }
        boolean macros = false;
        boolean outside = false;
        for (PackageRelationship each : main.getRelationships()) {
            String kind = kind(each);
            macros |= kind.equals("vbaProject");
            outside |= kind.equals("externalLink");
            if (kind.equals("sharedStrings")) {
                readTexts(part(main, each));
            } else if (kind.equals("styles")) {
                try (SheetXml xml = xml(part(main, each), MOST_OF_A_PART)) {
                    styles = XlsxStyles.read(xml);
                }
            }
        }
        if (macros || type.contains("macroenabled")) {
            notices.add(Remark.of("notice.macros", "the workbook holds macros, which were not run"));
        }
        if (outside) {
            notices.add(Remark.of(
                    "notice.other-workbooks",
                    "the workbook refers to other workbooks, which were not opened; what is stored of them was read"));
        }
        readSheets(main);
    }

    private PackagePart main() throws TextRefused {
        for (String type :
                List.of(PackageRelationshipTypes.CORE_DOCUMENT, PackageRelationshipTypes.STRICT_CORE_DOCUMENT)) {
            List<PackagePart> parts = opened.getPartsByRelationshipType(type);
            if (!parts.isEmpty() && parts.get(0) != null) {
                return parts.get(0);
            }
        }
        throw damaged(file);
    }

    /** The last word of a relationship's type, if it is one of the format's own. */
    private static String kind(PackageRelationship relationship) {
        String type = relationship.getRelationshipType();
        for (String own : List.of(TRANSITIONAL, STRICT)) {
            if (type.startsWith(own)) {
                return type.substring(own.length());
            }
        }
        return type.endsWith("/vbaProject") ? "vbaProject" : "";
    }

    private PackagePart part(PackagePart from, PackageRelationship relationship)
            throws OpenXML4JException, TextRefused {
        if (relationship.getTargetMode() == TargetMode.EXTERNAL) {
            throw new TextRefused(Fault.of(
                    FaultKind.WRONG_FORMAT,
                    Where.inFile(file),
                    "",
                    "a part of the workbook that is elsewhere, and was not fetched",
                    "a workbook that holds its sheets"));
        }
        PackagePart part = from.getRelatedPart(relationship);
        if (part == null) {
            throw damaged(file);
        }
        return part;
    }

    private SheetXml xml(PackagePart part, long most) throws IOException {
        return xml(part, most, Where.inFile(file));
    }

    private SheetXml xml(PackagePart part, long most, Where where) throws IOException {
        InputStream unpacked = part.getInputStream();
        if (unpacked == null) {
            throw damaged(file);
        }
        BoundedPart bounded = part instanceof ZipPackagePart packed
                ? BoundedPart.checked(file, unpacked, most, packed.getZipArchive())
                : new BoundedPart(file, unpacked, most);
        return new SheetXml(where, bounded);
    }

    private void readTexts(PackagePart part) throws IOException {
        try (SheetXml xml = xml(part, MOST_OF_A_PART)) {
            SheetXml.Event event = xml.next();
            while (event != SheetXml.Event.FINISH) {
                if (event == SheetXml.Event.START && xml.name().equals("si")) {
                    texts.add(XlsxSheet.richText(xml, Where.inFile(file)));
                }
                event = xml.next();
            }
        }
    }

    private void readSheets(PackagePart main) throws IOException, OpenXML4JException {
        try (SheetXml xml = xml(main, MOST_OF_A_PART)) {
            SheetXml.Event event = xml.next();
            while (event != SheetXml.Event.FINISH) {
                if (event == SheetXml.Event.START && xml.name().equals("workbookPr")) {
                    from1904 = xml.says("date1904");
                } else if (event == SheetXml.Event.START && xml.name().equals("sheet")) {
                    sheet(main, xml);
                }
                event = xml.next();
            }
        }
    }

    private void sheet(PackagePart main, SheetXml xml) throws IOException, OpenXML4JException {
        String name = xml.maybe("name").orElse("");
        String id = xml.maybe("id").orElse("");
        PackageRelationship relationship = main.getRelationship(id);
        if (relationship == null || name.isEmpty()) {
            throw damaged(file);
        }
        if (!kind(relationship).equals("worksheet")) {
            // A chart or a dialogue that fills a sheet of its own has no cells.
            return;
        }
        if (sheets.size() >= MOST_SHEETS) {
            throw new TextRefused(Fault.of(
                    FaultKind.TOO_LARGE,
                    Where.inFile(file),
                    "",
                    "a workbook of more than " + MOST_SHEETS + " sheets",
                    "a workbook of readings"));
        }
        boolean hidden =
                xml.maybe("state").filter(state -> state.endsWith("idden")).isPresent();
        sheets.add(new Sheet(name, hidden, part(main, relationship)));
    }

    @Override
    public List<Remark> notices() {
        return notices;
    }

    @Override
    public void walk(SheetTaker taker) throws IOException {
        for (Sheet sheet : sheets) {
            if (taker.begin(sheet.name(), sheet.hidden())) {
                try (SheetXml xml = xml(sheet.part(), MOST_OF_A_SHEET, new Where(file, sheet.name(), 0, 0, ""))) {
                    new XlsxSheet(file, sheet.name(), xml, texts, styles, from1904).read(taker);
                }
            }
        }
    }

    @Override
    public void close() {
        // Opened to be read: nothing is written back.
        opened.revert();
    }
}
