package io.github.firstoff.proof;

import io.github.firstoff.report.model.Attachment;
import io.github.firstoff.report.model.Attachment.Relationship;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The files that a sheet carries: what it was made from, byte for byte, and what came out. */
public final class Evidence {
    /** The result of the command, as {@code --json} prints it. */
    public static final String RESULT = "result.json";

    /**
     * So many bytes of readings are carried: far more than anyone measures by hand, and little enough to send by mail. Readings beyond
     * that are named with their SHA-256 and must be kept beside the sheet.
     */
    public static final long MOST_READINGS = 64L * 1024 * 1024;

    private static final String CSV = "text/csv";
    private static final String JSON = "application/json";

    private Evidence() {}

    /** One input with its bytes. */
    public static final class Kept {
        private final CarriedFile file;
        private final byte[] bytes;

        /**
         * An input.
         *
         * @param file what it is
         * @param bytes its bytes, not copied; empty where it is not carried
         */
        public Kept(CarriedFile file, byte[] bytes) {
            this.file = file;
            this.bytes = bytes;
        }

        /** What it is. */
        public CarriedFile file() {
            return file;
        }

        byte[] bytes() {
            return bytes;
        }
    }

    /**
     * The attachments of a sheet: inputs, result, judged readings and manifest.
     *
     * @param claim what the sheet says
     * @param inputs what it was made from, in the order in which they were read
     * @param options choices of the command line that change the sheet, by name
     */
    public static List<Attachment> of(Claim claim, List<Kept> inputs, Map<String, String> options) {
        List<Attachment> attachments = new ArrayList<>();
        for (Kept kept : inputs) {
            kept.file()
                    .attachment()
                    .ifPresent(name -> attachments.add(new Attachment(
                            name,
                            mediaType(kept.file().name()),
                            kept.file().role().description(),
                            Relationship.SOURCE,
                            kept.bytes())));
        }
        attachments.add(new Attachment(
                RESULT, JSON, "Result: every figure and verdict of the sheet", Relationship.DATA, result(claim)));
        if (inputs.stream().allMatch(kept -> kept.file().attachment().isPresent())) {
            claim.readings()
                    .ifPresent(readings -> attachments.add(new Attachment(
                            readings.name(), CSV, readings.description(), Relationship.DATA, readings.csv())));
        }
        Manifest manifest = new Manifest(
                claim.command(),
                claim.provenance().program(),
                claim.provenance().madeAt(),
                options,
                inputs.stream().map(Kept::file).toList());
        attachments.add(new Attachment(
                Manifest.NAME,
                JSON,
                "How the sheet was made, so that it can be made again",
                Relationship.SUPPLEMENT,
                manifest.json()));
        return attachments;
    }

    private static byte[] result(Claim claim) {
        StringWriter text = new StringWriter();
        claim.write(text);
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String mediaType(String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        if (lower.endsWith(".json")) {
            return JSON;
        }
        if (lower.endsWith(".csv")) {
            return CSV;
        }
        if (lower.endsWith(".xml") || lower.endsWith(".qif")) {
            return "application/xml";
        }
        if (lower.endsWith(".svg")) {
            return "image/svg+xml";
        }
        if (lower.endsWith(".png")) {
            return "image/png";
        }
        return lower.endsWith(".txt") ? "text/plain" : "application/octet-stream";
    }
}
