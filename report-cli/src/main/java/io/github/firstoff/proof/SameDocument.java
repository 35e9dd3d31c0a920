package io.github.firstoff.proof;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSFloat;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * Holds one PDF file against another, object by object and with streams unpacked, from the trailer down: whatever a reader of the file can
 * show is compared, how it is packed is not.
 */
final class SameDocument {
    private static final int MOST = 20;
    private static final String PAGE = "Page/";
    private static final Set<COSName> PACKING =
            Set.of(COSName.LENGTH, COSName.FILTER, COSName.DECODE_PARMS, COSName.getPDFName("DL"));

    private final boolean signaturesAside;
    private final Set<String> differences = new LinkedHashSet<>();
    private final IdentityHashMap<COSBase, Set<COSBase>> seen = new IdentityHashMap<>();
    private final Deque<Pair> todo = new ArrayDeque<>();

    private record Pair(String where, COSBase one, COSBase other) {}

    private SameDocument(boolean signaturesAside) {
        this.signaturesAside = signaturesAside;
    }

    /**
     * The places in which two files differ; at most {@value #MOST}.
     *
     * @param one a file
     * @param other the other
     * @param signaturesAside whether the other may have signatures in the fields that the first has for them
     */
    static List<String> differences(PDDocument one, PDDocument other, boolean signaturesAside) throws IOException {
        SameDocument comparison = new SameDocument(signaturesAside);
        // Pages first, so that what differs on one is called by its number and not by its place in the tree of pages.
        int pages = one.getNumberOfPages();
        if (pages != other.getNumberOfPages()) {
            comparison.differences.add("the number of pages: " + pages + " and " + other.getNumberOfPages());
        }
        for (int i = 0; i < Math.min(pages, other.getNumberOfPages()); i++) {
            comparison.todo.add(new Pair(
                    PAGE + (i + 1),
                    one.getPage(i).getCOSObject(),
                    other.getPage(i).getCOSObject()));
        }
        comparison.work();
        COSDictionary first = one.getDocument().getTrailer();
        COSDictionary second = other.getDocument().getTrailer();
        for (COSName key : List.of(COSName.ROOT, COSName.INFO)) {
            comparison.compare(key.getName(), first.getItem(key), second.getItem(key));
        }
        comparison.compare("ID", firstOf(first.getCOSArray(COSName.ID)), firstOf(second.getCOSArray(COSName.ID)));
        comparison.work();
        return List.copyOf(comparison.differences);
    }

    private void work() throws IOException {
        while (!todo.isEmpty() && differences.size() < MOST) {
            Pair pair = todo.poll();
            compare(pair.where(), pair.one(), pair.other());
        }
    }

    private static COSBase firstOf(COSArray array) {
        return array == null || array.size() == 0 ? COSName.getPDFName("none") : array.get(0);
    }

    private static COSBase resolved(COSBase base) {
        return base instanceof COSObject object ? object.getObject() : base;
    }

    private void compare(String where, COSBase first, COSBase second) throws IOException {
        COSBase one = resolved(first);
        COSBase other = resolved(second);
        if (one == other) {
            return;
        }
        if (one == null || other == null) {
            differ(where);
        } else if (one instanceof COSDictionary a && other instanceof COSDictionary b) {
            if (seen.computeIfAbsent(a, key -> java.util.Collections.newSetFromMap(new IdentityHashMap<>()))
                    .add(b)) {
                dictionaries(where, a, b);
            }
        } else if (one instanceof COSArray a && other instanceof COSArray b) {
            if (a.size() != b.size()) {
                differ(where);
            } else {
                for (int i = 0; i < a.size(); i++) {
                    todo.add(new Pair(where + "/" + i, a.get(i), b.get(i)));
                }
            }
        } else if (!sameValue(one, other)) {
            differ(where);
        }
    }

    private static boolean sameValue(COSBase one, COSBase other) {
        if (one instanceof COSNumber a && other instanceof COSNumber b) {
            boolean whole = one instanceof COSInteger && other instanceof COSInteger;
            return whole ? a.longValue() == b.longValue() : Float.compare(a.floatValue(), b.floatValue()) == 0;
        }
        if (one instanceof COSString a && other instanceof COSString b) {
            return java.util.Arrays.equals(a.getBytes(), b.getBytes());
        }
        return !(one instanceof COSFloat) && one.equals(other);
    }

    private void dictionaries(String where, COSDictionary one, COSDictionary other) throws IOException {
        boolean streams = one instanceof COSStream;
        if (streams != other instanceof COSStream) {
            differ(where);
            return;
        }
        Set<COSName> keys = new HashSet<>(one.keySet());
        keys.addAll(other.keySet());
        if (streams) {
            keys.removeAll(PACKING);
        }
        if (COSName.PAGE.equals(one.getCOSName(COSName.TYPE))) {
            keys.remove(COSName.PARENT);
        }
        if (signaturesAside) {
            keys.removeAll(signedKeys(where, one, other));
        }
        for (COSName key : keys.stream().sorted().toList()) {
            COSBase a = one.getItem(key);
            COSBase b = other.getItem(key);
            if (a == null || b == null) {
                if (resolved(a) != resolved(b)) {
                    differ(where + "/" + key.getName());
                }
            } else {
                todo.add(new Pair(where + "/" + key.getName(), a, b));
            }
        }
        if (streams && !sameContent((COSStream) one, (COSStream) other)) {
            differ(where);
        }
    }

    /** What signing changes: the value and the picture of a field for signatures, and the form's note that there are some. */
    private static List<COSName> signedKeys(String where, COSDictionary one, COSDictionary other) {
        if (where.equals("Root/AcroForm")) {
            return List.of(COSName.getPDFName("SigFlags"));
        }
        if (where.equals("Root")) {
            return other.containsKey(COSName.getPDFName("DSS")) && !one.containsKey(COSName.getPDFName("DSS"))
                    ? List.of(COSName.getPDFName("DSS"), COSName.getPDFName("Extensions"))
                    : List.of();
        }
        if (COSName.SIG.equals(one.getCOSName(COSName.FT)) && COSName.SIG.equals(other.getCOSName(COSName.FT))) {
            // An empty field stays as it is: what is drawn into it without a signature would look like one.
            return one.containsKey(COSName.V) || !other.containsKey(COSName.V)
                    ? List.of()
                    : List.of(COSName.V, COSName.AP);
        }
        return List.of();
    }

    private static boolean sameContent(COSStream one, COSStream other) throws IOException {
        try (InputStream a = one.createInputStream();
                InputStream b = other.createInputStream()) {
            return java.util.Arrays.equals(a.readAllBytes(), b.readAllBytes());
        }
    }

    private void differ(String where) {
        differences.add(inWords(where));
    }

    /** A place in the tree of objects, in the words of one who looks at a sheet. */
    private static String inWords(String where) {
        if (where.startsWith(PAGE)) {
            List<String> steps = List.of(where.split("/", -1));
            String page = "page " + steps.get(1);
            List<String> rest = steps.subList(2, steps.size());
            if (rest.isEmpty()) {
                return page;
            }
            return switch (rest.get(0)) {
                case "Contents" -> "the drawing of " + page;
                case "Resources" -> rest.contains("Font") ? "a typeface of " + page : "a picture on " + page;
                case "Annots" -> "a field or link on " + page;
                default -> page + " (" + String.join("/", rest) + ")";
            };
        }
        if (where.startsWith("Root/Names/EmbeddedFiles") || where.startsWith("Root/AF")) {
            return "a file that the sheet carries, or the list of them";
        }
        if (where.startsWith("Root/Metadata")) {
            return "the metadata (XMP)";
        }
        if (where.startsWith("Root/Outlines")) {
            return "the outline";
        }
        if (where.startsWith("Root/OutputIntents")) {
            return "the meaning of the colours";
        }
        if (where.startsWith("Root/PieceInfo")) {
            return "the seal";
        }
        if (where.startsWith("Root/StructTreeRoot")) {
            return "the structure for reading aloud";
        }
        if (where.startsWith("Info")) {
            return "the properties of the document (" + where + ")";
        }
        if (where.startsWith("ID")) {
            return "the identity of the file";
        }
        return "the file's object " + where;
    }
}
