package io.github.firstoff.proof;

import io.github.firstoff.proof.Finding.Area;
import io.github.firstoff.report.model.Attachment;
import io.github.firstoff.report.pdf.Seal;
import io.github.firstoff.words.Labels;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * Holds a sheet against itself: its bytes against its seal, its inputs against their digests, its figures against those that its inputs come
 * to, its pages against both.
 */
public final class Verification {
    private static final int MOST = 20;
    private static final Pattern OBJECT = Pattern.compile("\\n(\\d+) \\d+ obj\\b");

    private final SheetFile sheet;
    private final List<SignatureReport> signatures;
    private final String program;
    private final List<Finding> findings = new ArrayList<>();

    private Verification(SheetFile sheet, List<SignatureReport> signatures, String program) {
        this.sheet = sheet;
        this.signatures = signatures;
        this.program = program;
    }

    /** The sheet as this program makes it from what the sheet carries. */
    public static final class Again {
        private final Claim claim;
        private final List<Attachment> attachments;
        private final byte[] pdf;

        /**
         * A sheet made again.
         *
         * @param claim what it says
         * @param attachments what it carries
         * @param pdf its file; empty where it cannot be compared, because the sheet is of another version
         */
        public Again(Claim claim, List<Attachment> attachments, byte[] pdf) {
            this.claim = claim;
            this.attachments = List.copyOf(attachments);
            this.pdf = pdf;
        }

        private Optional<byte[]> attachment(String name) {
            return attachments.stream()
                    .filter(each -> each.name().equals(name))
                    .findFirst()
                    .map(Attachment::bytes);
        }
    }

    /** Whether a sheet is of another version than this program. */
    public static boolean isOfAnotherVersion(SheetFile sheet, String program) {
        return !sheet.manifest().program().equals(program);
    }

    /**
     * Checks everything but the signatures, whose reports are given.
     *
     * @param sheet the sheet
     * @param signatures what is known of its signatures
     * @param program this program with its version
     * @param again the sheet made again; empty if that failed, and then {@code refusal} says why
     * @param refusal why its inputs could not be used
     */
    public static List<Finding> of(
            SheetFile sheet,
            List<SignatureReport> signatures,
            String program,
            Optional<Again> again,
            List<String> refusal) {
        Verification verification = new Verification(sheet, signatures, program);
        verification.version();
        verification.bytes(again);
        verification.afterwards();
        verification.inputs(refusal);
        again.ifPresent(verification::figures);
        again.ifPresent(verification::pages);
        verification.signed();
        return List.copyOf(verification.findings);
    }

    /**
     * What must hold before a further signature is put to a sheet: that nobody signs what was changed.
     *
     * @param sheet the sheet
     * @param signatures what is known of the signatures that it has
     */
    public static List<Finding> beforeSigning(SheetFile sheet, List<SignatureReport> signatures) {
        Verification verification = new Verification(sheet, signatures, "");
        verification.bytes(Optional.empty());
        verification.afterwards();
        verification.inputs(List.of());
        signatures.forEach(each -> verification.findings.addAll(each.findings()));
        return List.copyOf(verification.findings);
    }

    private void version() {
        if (isOfAnotherVersion(sheet, program)) {
            findings.add(
                    Finding.open(
                            Area.RESULT,
                            "The sheet was made by " + sheet.manifest().program() + "; this is " + program
                                    + ". It is checked by the figures that it carries; how its pages are set is not compared."));
        }
    }

    private void bytes(Optional<Again> again) {
        Optional<Seal> seal = sheet.seal();
        if (seal.isEmpty()) {
            findings.add(Finding.no(
                    Area.BYTES,
                    "The file has no seal: it is not the file that this program wrote, but one that another program wrote from it, or"
                            + " its seal was changed."));
            return;
        }
        if (seal.get().isIntact(sheet.bytes())) {
            findings.add(Finding.yes(
                    Area.BYTES,
                    "The " + seal.get().length()
                            + " bytes of the sheet are those that were written when it was made."));
        } else {
            findings.add(Finding.no(
                    Area.BYTES,
                    "The bytes of the sheet are not those that were written when it was made"
                            + again.flatMap(this::firstDifference).orElse("") + "."));
        }
        if (signatures.isEmpty() && seal.get().length() < sheet.bytes().length) {
            findings.add(Finding.no(
                    Area.BYTES,
                    (sheet.bytes().length - seal.get().length())
                            + " bytes were appended after the sheet was made, and no signature covers them."));
        }
    }

    /** Where the bytes depart from those of the sheet made again; nothing where these were packed in another way. */
    private Optional<String> firstDifference(Again again) {
        byte[] made = sheet.asMade();
        if (again.pdf.length != made.length) {
            return Optional.empty();
        }
        int first = Arrays.mismatch(made, again.pdf);
        long count = 0;
        for (int i = 0; i < made.length; i++) {
            count += made[i] == again.pdf[i] ? 0 : 1;
        }
        if (first < 0 || count > made.length / 2) {
            return Optional.empty();
        }
        return Optional.of(": byte " + (first + 1) + ", " + region(again.pdf, first)
                + (count == 1 ? "" : ", and " + (count - 1) + " more"));
    }

    private static String region(byte[] file, int place) {
        String before = new String(file, 0, place, StandardCharsets.ISO_8859_1);
        if (before.lastIndexOf("\nxref") > before.lastIndexOf(" obj")) {
            return before.lastIndexOf("\ntrailer") > 0 ? "in the trailer" : "in the table of objects";
        }
        Matcher matcher = OBJECT.matcher(before);
        String object = "";
        int end = 0;
        while (matcher.find()) {
            object = matcher.group(1);
            end = matcher.end();
        }
        if (object.isEmpty()) {
            return "in the head of the file";
        }
        String all = new String(file, end, Math.min(600, file.length - end), StandardCharsets.ISO_8859_1);
        String kind = all.contains("/EmbeddedFile")
                ? ", a file that the sheet carries"
                : all.contains("/FontFile2") || all.contains("/Length1") || all.contains("/Font") ? ", a typeface" : "";
        return "in object " + object + kind;
    }

    /** What a reader sees is the file with everything appended; only signatures may have been. */
    private void afterwards() {
        byte[] made = sheet.asMade();
        if (made.length == sheet.bytes().length) {
            return;
        }
        try (PDDocument one = Loader.loadPDF(made);
                PDDocument other = Loader.loadPDF(sheet.bytes())) {
            List<String> differences = SameDocument.differences(one, other, true);
            findings.add(
                    differences.isEmpty()
                            ? Finding.yes(Area.BYTES, "Nothing but signatures was added after the sheet was made.")
                            : Finding.no(
                                    Area.BYTES,
                                    "Something else than signatures was changed after the sheet was made: "
                                            + String.join("; ", differences) + "."));
        } catch (IOException fault) {
            findings.add(Finding.no(Area.BYTES, "The sheet as it was before signatures were appended cannot be read."));
        }
    }

    private void inputs(List<String> refusal) {
        int sound = 0;
        for (CarriedFile input : sheet.manifest().inputs()) {
            Optional<byte[]> carried = input.attachment().flatMap(sheet::attachment);
            if (input.attachment().isEmpty()) {
                findings.add(Finding.open(
                        Area.INPUTS,
                        input.name() + " (" + input.size()
                                + " bytes) is too large to be carried by the sheet; its SHA-256 was " + input.sha256()
                                + "."));
            } else if (carried.isEmpty()) {
                findings.add(Finding.no(Area.INPUTS, input.attachment().get() + " is missing from the sheet."));
            } else if (!input.sha256().equals(sha256(carried.get()))) {
                findings.add(Finding.no(
                        Area.INPUTS,
                        input.attachment().get()
                                + " is not the file that was read when the sheet was made: its SHA-256 is "
                                + sha256(carried.get()) + ", not " + input.sha256() + "."));
            } else {
                sound++;
            }
        }
        if (sound > 0) {
            findings.add(Finding.yes(
                    Area.INPUTS,
                    sound + (sound == 1 ? " file that it carries is" : " files that it carries are")
                            + ", by the digests it states, what was read when it was made."));
        }
        if (!refusal.isEmpty()) {
            List<String> shown = refusal.subList(0, Math.min(3, refusal.size()));
            findings.add(Finding.no(Area.INPUTS, "What it carries is refused as input: " + String.join(" ", shown)));
        }
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException fault) {
            throw new IllegalStateException("every Java has SHA-256", fault);
        }
    }

    private void figures(Again again) {
        // The cause before its consequences.
        again.claim.readings().ifPresent(readings -> readings(readings, again));
        boolean older = isOfAnotherVersion(sheet, program);
        try {
            FigureComparison.Outcome outcome = FigureComparison.of(
                    Json.parse(sheet.attachment(Evidence.RESULT).orElse(new byte[0])),
                    Json.parse(again.attachment(Evidence.RESULT).orElse(new byte[0])),
                    older);
            if (!outcome.reworded().isEmpty()) {
                findings.add(Finding.open(
                        Area.RESULT,
                        "Sentences that the two versions put in other words, with the same figures in them, were not compared: "
                                + String.join("; ", outcome.reworded()) + "."));
            }
            if (outcome.differences().isEmpty()) {
                findings.add(
                        Finding.yes(
                                Area.RESULT,
                                "All " + outcome.compared()
                                        + " figures, verdicts and texts of its result come out the same when reckoned again from what it carries."));
            } else {
                list(Area.RESULT, outcome.differences(), "figures or texts of its result differ");
            }
        } catch (IOException fault) {
            findings.add(Finding.no(Area.RESULT, "The result that it carries cannot be read: " + fault.getMessage()));
        }
    }

    private void readings(ReadingLines lines, Again again) {
        Optional<byte[]> carried = sheet.attachment(lines.name());
        Optional<byte[]> fresh = again.attachment(lines.name());
        if (carried.isPresent() && fresh.isPresent()) {
            readings(lines, lines.linesOf(carried.get()), lines.linesOf(fresh.get()));
        } else if (carried.isEmpty() && fresh.isPresent()) {
            findings.add(Finding.no(Area.RESULT, lines.name() + " is missing from the sheet."));
        }
    }

    /** Line by line, so that the very reading is named. */
    private void readings(ReadingLines lines, List<String> carried, List<String> again) {
        Map<String, List<String>> places = new LinkedHashMap<>();
        for (String line : again) {
            places.computeIfAbsent(lines.place(line), key -> new ArrayList<>()).add(line);
        }
        List<String> differences = new ArrayList<>();
        for (String line : carried) {
            String place = lines.place(line);
            List<String> here = places.getOrDefault(place, new ArrayList<>());
            if (here.remove(line)) {
                continue;
            }
            differences.add("the sheet was made on " + lines.inWords(line)
                    + (here.isEmpty()
                            ? "; what it carries has no such reading"
                            : "; what it carries says " + lines.inWords(here.remove(0))));
        }
        places.values()
                .forEach(rest -> rest.forEach(line -> differences.add(
                        "what it carries has " + lines.inWords(line) + "; the sheet was made without it")));
        if (differences.isEmpty()) {
            findings.add(Finding.yes(
                    Area.RESULT,
                    "All " + carried.size() + " readings are taken as they were when the sheet was made."));
        } else {
            list(Area.RESULT, differences, "readings differ");
        }
    }

    private void list(Area area, List<String> differences, String counted) {
        for (String difference : differences.subList(0, Math.min(MOST, differences.size()))) {
            findings.add(Finding.no(
                    area,
                    difference.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + difference.substring(1) + "."));
        }
        if (differences.size() > MOST) {
            findings.add(Finding.no(
                    area, differences.size() + " " + counted + " in all; the first " + MOST + " stand above."));
        }
    }

    private void pages(Again again) {
        if (isOfAnotherVersion(sheet, program)) {
            printedFigures(again.claim.printed());
            return;
        }
        byte[] made = sheet.asMade();
        if (Arrays.equals(made, again.pdf)) {
            findings.add(Finding.yes(
                    Area.PAGES, "Made again from what it carries, the sheet is the same file to the last byte."));
            return;
        }
        try (PDDocument one = Loader.loadPDF(made);
                PDDocument other = Loader.loadPDF(again.pdf)) {
            printedLines(SheetFile.read("the sheet made again", again.pdf).pages());
            List<String> differences = SameDocument.differences(one, other, false).stream()
                    .filter(each -> !each.equals("the seal"))
                    .toList();
            findings.add(
                    differences.isEmpty()
                            ? Finding.yes(
                                    Area.PAGES,
                                    "Made again from what it carries, the sheet is the same in every part; only the packing of its bytes"
                                            + " differs, as between versions of Java.")
                            : Finding.no(
                                    Area.PAGES,
                                    "Made again from what it carries, the sheet differs in "
                                            + String.join("; ", differences) + "."));
        } catch (IOException fault) {
            findings.add(Finding.no(Area.PAGES, "The pages cannot be compared: " + fault.getMessage()));
        }
    }

    private void printedLines(List<String> again) {
        List<String> differences = new ArrayList<>();
        for (int page = 0; page < Math.min(again.size(), sheet.pages().size()); page++) {
            List<String> printed = sheet.pages().get(page).lines().toList();
            List<String> expected = again.get(page).lines().toList();
            for (int i = 0; i < Math.max(printed.size(), expected.size()); i++) {
                String one = i < printed.size() ? printed.get(i) : "";
                String other = i < expected.size() ? expected.get(i) : "";
                if (!one.equals(other)) {
                    differences.add("page " + (page + 1) + " prints \u201C" + one + "\u201D where its data say \u201C"
                            + other + "\u201D");
                }
            }
        }
        list(Area.PAGES, differences, "printed lines differ");
    }

    /** Of a sheet of another version: whether the figures of its result that it prints as they are stand on its pages. */
    private void printedFigures(PrintedFigures printed) {
        String text = plain(String.join(" ", sheet.pages()));
        List<String> missing = new ArrayList<>();
        int found = 0;
        try {
            for (PrintedFigures.Figure figure :
                    printed.of(sheet.attachment(Evidence.RESULT).orElse(new byte[0]))) {
                if (figure.sentence() && !sheet.language().equals(Labels.ENGLISH)) {
                    continue;
                }
                if (text.contains(plain(figure.written()))) {
                    found++;
                } else {
                    missing.add(figure.place() + " is " + figure.written()
                            + " in its result and was not found on its pages");
                }
            }
        } catch (IOException fault) {
            findings.add(Finding.no(Area.PAGES, "The result that it carries cannot be read: " + fault.getMessage()));
            return;
        }
        if (missing.isEmpty()) {
            findings.add(Finding.yes(
                    Area.PAGES,
                    "All " + found + " figures of its result that it prints as they are stand on its pages."));
        } else {
            list(Area.PAGES, missing, "figures were not found on its pages");
        }
    }

    /** Sheets set a minus where data have a hyphen, spaces that do not break a line, and lines where data have none. */
    private static String plain(String text) {
        return text.replace('\u2212', '-').replace('\u00A0', ' ').replaceAll("\\s+", " ");
    }

    private void signed() {
        if (signatures.isEmpty()) {
            findings.add(
                    Finding.open(
                            Area.SIGNATURE,
                            "It is not signed: nothing proves who made it, and whoever changes data and sheet together leaves no trace."));
        }
    }
}
