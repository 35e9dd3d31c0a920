package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;

/**
 * The parts of a package that its library reads whole: the list of types, the references from part to part and the properties. They are
 * small in any workbook, and are unpacked here once to see that they are, whatever the list of contents says.
 */
final class SmallParts {
    static final String TYPES = "[Content_Types].xml";
    private static final String PROPERTIES = "core-properties+xml";
    private static final long MOST = 1L << 20;
    private static final long MOST_TOGETHER = 8L << 20;

    private final String file;
    private final ZipFile zip;
    private long together;

    private SmallParts(String file, ZipFile zip) {
        this.file = file;
        this.zip = zip;
    }

    /** Refuses a package of which one of these parts is large. */
    static void require(String file, Path path, ZipDirectory directory) throws IOException {
        try (ZipFile zip = new ZipFile(path.toFile())) {
            SmallParts parts = new SmallParts(file, zip);
            parts.require(TYPES);
            Set<String> small = parts.properties();
            directory.names().stream()
                    .filter(name -> name.toLowerCase(Locale.ROOT).endsWith(".rels"))
                    .forEach(small::add);
            for (String name : small) {
                parts.require(name);
            }
        } catch (ZipException fault) {
            throw new TextRefused(Fault.of(
                    FaultKind.SYNTAX,
                    Where.inFile(file),
                    "the workbook is damaged: what is packed in it cannot be unpacked",
                    "",
                    "the whole file; it was perhaps cut short"));
        }
    }

    /** The parts that are properties by their type. */
    private Set<String> properties() throws IOException {
        Set<String> names = new LinkedHashSet<>();
        try (SheetXml xml = new SheetXml(Where.inFile(file), open(TYPES))) {
            SheetXml.Event event = xml.next();
            while (event != SheetXml.Event.FINISH) {
                boolean properties = event == SheetXml.Event.START
                        && xml.maybe("ContentType")
                                .filter(type -> type.toLowerCase(Locale.ROOT).contains(PROPERTIES))
                                .isPresent();
                if (properties) {
                    String extension = xml.maybe("Extension").orElse("");
                    String name = xml.maybe("PartName").orElse("");
                    names.add(name.startsWith("/") ? name.substring(1) : name);
                    zip.stream()
                            .map(ZipEntry::getName)
                            .filter(each -> !extension.isEmpty() && each.endsWith("." + extension))
                            .forEach(names::add);
                }
                event = xml.next();
            }
        }
        return names;
    }

    private BoundedPart open(String name) throws IOException {
        ZipEntry entry = zip.getEntry(name);
        return entry == null
                ? new BoundedPart(file, InputStream.nullInputStream(), MOST)
                : BoundedPart.checked(file, zip.getInputStream(entry), MOST, entry);
    }

    private void require(String name) throws IOException {
        byte[] unused = new byte[8192];
        try (InputStream part = open(name)) {
            int count = 0;
            while (count >= 0) {
                together += count;
                count = part.read(unused, 0, unused.length);
            }
        }
        if (together > MOST_TOGETHER) {
            throw new TextRefused(Fault.of(
                    FaultKind.TOO_LARGE,
                    Where.inFile(file),
                    "",
                    "a workbook whose parts refer to very many others",
                    "a workbook of readings"));
        }
    }
}
