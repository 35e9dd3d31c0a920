package io.github.firstoff.proof;

import io.github.firstoff.report.pdf.Seal;
import io.github.firstoff.words.Labels;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.common.PDNameTreeNode;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;
import org.apache.pdfbox.text.PDFTextStripper;

/** A sheet read back from its file: what it carries, what is printed on its pages, and the bytes it had when it was made. */
public final class SheetFile {
    /** The logger of the library, held so that it stays silent: what it has to say of a damaged file, we say in our own words. */
    private static final Logger LIBRARY = Logger.getLogger("org.apache");

    /** More than any sheet carries; a file that unpacks to more is not one of ours. */
    private static final int MOST_UNPACKED = 512 * 1024 * 1024;

    private static final int DEEPEST_TREE = 8;

    private final byte[] bytes;
    private final Optional<Seal> seal;
    private final Map<String, byte[]> attachments;
    private final List<String> pages;
    private final Manifest manifest;
    private final Labels language;

    private SheetFile(
            byte[] bytes,
            Optional<Seal> seal,
            Map<String, byte[]> attachments,
            List<String> pages,
            Manifest manifest,
            Labels language) {
        this.bytes = bytes;
        this.seal = seal;
        this.attachments = attachments;
        this.pages = pages;
        this.manifest = manifest;
        this.language = language;
    }

    static void silenceLibrary() {
        LIBRARY.setLevel(Level.OFF);
    }

    /**
     * Reads a sheet.
     *
     * @param name by which messages call the file
     * @param bytes its bytes; not copied
     * @throws ProofRefused if it is no PDF file, is encrypted, or carries no result of this program
     */
    public static SheetFile read(String name, byte[] bytes) {
        silenceLibrary();
        Optional<Seal> seal = Seal.find(bytes);
        if (seal.isEmpty() && !isPdf(bytes)) {
            throw new ProofRefused(
                    name + " cannot be read as a sheet: it is no PDF file; expected a sheet that this program wrote");
        }
        String broken = seal.isPresent() && !seal.get().isIntact(bytes)
                ? "; its bytes are not those that were written when the sheet was made"
                : "";
        try (PDDocument document = Loader.loadPDF(bytes)) {
            if (document.isEncrypted()) {
                throw new ProofRefused(name + " is encrypted; sheets of this program are not");
            }
            Map<String, byte[]> attachments = attachments(document);
            byte[] manifest = attachments.get(Manifest.NAME);
            if (manifest == null || !attachments.containsKey(Evidence.RESULT)) {
                throw new ProofRefused(
                        name + " carries no result of this program: it is not a sheet, or its attachments were removed"
                                + broken);
            }
            return new SheetFile(
                    bytes, seal, attachments, pages(document), Manifest.read(manifest), Signer.language(document));
        } catch (InvalidPasswordException fault) {
            throw new ProofRefused(name + " is encrypted; sheets of this program are not", fault);
        } catch (IOException | RuntimeException fault) {
            if (fault instanceof ProofRefused refused) {
                throw refused;
            }
            // The library answers damage with many kinds of fault; to the reader they are one.
            throw new ProofRefused(
                    name + " cannot be read as a sheet"
                            + (fault.getMessage() == null ? "" : " (" + firstLine(fault.getMessage()) + ")") + broken,
                    fault);
        }
    }

    /** Whether the file begins as a PDF file does; readers look for that in the first kilobyte. */
    private static boolean isPdf(byte[] bytes) {
        return new String(bytes, 0, Math.min(bytes.length, 1024), StandardCharsets.ISO_8859_1).contains("%PDF-");
    }

    private static String firstLine(String message) {
        return message.lines().findFirst().orElse("");
    }

    private static Map<String, byte[]> attachments(PDDocument document) throws IOException {
        Map<String, byte[]> found = new LinkedHashMap<>();
        PDDocumentNameDictionary names = document.getDocumentCatalog().getNames();
        PDEmbeddedFilesNameTreeNode tree = names == null ? null : names.getEmbeddedFiles();
        if (tree != null) {
            collect(tree, found, 0, MOST_UNPACKED);
        }
        return found;
    }

    private static long collect(
            PDNameTreeNode<PDComplexFileSpecification> node, Map<String, byte[]> found, int depth, long most)
            throws IOException {
        long room = most;
        if (depth > DEEPEST_TREE) {
            throw new IOException("its list of attachments is too deep");
        }
        Map<String, PDComplexFileSpecification> here = node.getNames();
        if (here != null) {
            for (Map.Entry<String, PDComplexFileSpecification> entry : here.entrySet()) {
                PDEmbeddedFile file =
                        entry.getValue() == null ? null : entry.getValue().getEmbeddedFile();
                if (file == null) {
                    continue;
                }
                byte[] content;
                try (java.io.InputStream in = file.createInputStream()) {
                    content = in.readNBytes(Math.toIntExact(room) + 1);
                }
                room -= content.length;
                if (room < 0) {
                    throw new IOException("its attachments are larger than those of any sheet");
                }
                found.put(entry.getKey(), content);
            }
        }
        List<PDNameTreeNode<PDComplexFileSpecification>> kids = node.getKids();
        if (kids != null) {
            for (PDNameTreeNode<PDComplexFileSpecification> kid : kids) {
                room = collect(kid, found, depth + 1, room);
            }
        }
        return room;
    }

    private static List<String> pages(PDDocument document) throws IOException {
        List<String> pages = new ArrayList<>();
        PDFTextStripper stripper = new PDFTextStripper();
        for (int page = 1; page <= document.getNumberOfPages(); page++) {
            stripper.setStartPage(page);
            stripper.setEndPage(page);
            pages.add(stripper.getText(document));
        }
        return pages;
    }

    /** How it can be made again. */
    public Manifest manifest() {
        return manifest;
    }

    /** What it carries under a name. */
    public Optional<byte[]> attachment(String name) {
        return Optional.ofNullable(attachments.get(name)).map(byte[]::clone);
    }

    byte[] bytes() {
        return bytes;
    }

    Optional<Seal> seal() {
        return seal;
    }

    /** The language that its pages speak. */
    Labels language() {
        return language;
    }

    /** The text of each page. */
    List<String> pages() {
        return pages;
    }

    /** The bytes of the sheet as it was made, before signatures were appended; all bytes where that is not told. */
    byte[] asMade() {
        return seal.filter(found -> found.length() < bytes.length && found.length() > 0)
                .map(found -> Arrays.copyOf(bytes, Math.toIntExact(found.length())))
                .orElse(bytes);
    }
}
