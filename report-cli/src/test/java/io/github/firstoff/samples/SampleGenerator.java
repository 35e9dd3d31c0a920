package io.github.firstoff.samples;

import io.github.firstoff.samples.Checked.Inspected;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * Writes the files of {@code sample-measurements/}: always the same ones, from the seeds below and nothing else.
 *
 * <p>Each batch has a seed; each characteristic of a batch draws from a stream of its own, so that one more reading of one
 * leaves the others as they are. The seed of batch 2207 was chosen, among many that do as well, so that the charts of the
 * spigot and the flange show no signal: four zone tests over so many points often raise a false one on a stable process.
 */
public final class SampleGenerator {

    private static final long FIRST_ARTICLE_PORT = 2201;
    private static final long FIRST_ARTICLE_STARBOARD = 2202;
    private static final long FIRST_ARTICLE_REJECTED = 2203;
    private static final long FIRST_ARTICLE_INCOMPLETE = 2204;
    private static final long FIRST_ARTICLE_GUARDED = 2205;
    private static final long BATCH_2207 = 311_207;
    private static final long BATCH_2208 = 2208;
    private static final long BATCH_2209 = 2209;
    private static final long FIRST_ARTICLE_INCH = 2210;

    /** The last piece that the edge of the boring bar still cut to size; from the next on it wears. */
    private static final int EDGE_HOLDS_UNTIL = 45;

    /** How much smaller each later piece's seat becomes, in millimetres. */
    private static final BigDecimal WEAR_PER_PIECE = new BigDecimal("0.00014");

    private static final String LATHE = "lathe 2";
    private static final String OTHER_LATHE = "lathe 5";
    private static final String INSPECTOR = "A. Quill";

    private SampleGenerator() {}

    /**
     * Writes all files into a folder.
     *
     * @param arguments the folder; {@code sample-measurements} without one
     * @throws IOException if a file cannot be written
     */
    public static void main(String[] arguments) throws IOException {
        writeTo(Path.of(arguments.length == 0 ? "sample-measurements" : arguments[0]));
    }

    /** Writes all files into a folder, which is made if need be. */
    static void writeTo(Path folder) throws IOException {
        Files.createDirectories(folder);
        for (Map.Entry<String, String> file : files().entrySet()) {
            Files.writeString(folder.resolve(file.getKey()), file.getValue(), StandardCharsets.UTF_8);
        }
    }

    /** The text of every file, by its name. */
    static Map<String, String> files() {
        Map<String, String> files = new LinkedHashMap<>();
        files.put("hq-310-p.plan.json", DrumCarrier.PORT.plan(Optional.empty()));
        files.put("hq-310-s.plan.json", DrumCarrier.STARBOARD.plan(Optional.empty()));
        files.put("hq-310-p-guarded.plan.json", DrumCarrier.PORT.plan(Optional.of("guarded")));
        files.put("hq-045.plan.json", CleatScrew.plan());
        firstArticles(files);
        batch2207(files);
        batch2208(files);
        batch2209(files);
        PawlCarrier.writeTo(files);
        FollowedBatches.writeTo(files);
        WornTools.writeTo(files);
        PressFits.writeTo(files);
        return files;
    }

    private static void firstArticles(Map<String, String> files) {
        List<Checked> port = DrumCarrier.PORT.characteristics();
        List<Checked> starboard = DrumCarrier.STARBOARD.characteristics();

        List<Piece> accepted = firstArticle(FIRST_ARTICLE_PORT, port, 3, LocalDate.of(2026, 11, 9));
        // Beyond Ø0.2, and yet good: the hole of that piece is larger than its maximum material size by more than the
        // excess.
        accepted.get(2).with("11", "0.231");
        files.put("first-article-hq-310-p.csv", ReadingsText.longForm(accepted, port, LATHE));
        files.put("hq-310-p.plan.qif", QifSamples.plan(port));
        files.put("first-article-hq-310-p.results.qif", QifSamples.results(port, accepted, LATHE));
        files.put("first-article-hq-310-p.together.qif", QifSamples.together(port, accepted, LATHE));
        files.put("hq-310-p.table.txt", DrumCarrier.PORT.table());
        files.put(
                "first-article-hq-310-p.job.json",
                carrierJob("J-1176", "B-2201", 3, LocalDate.of(2026, 11, 9))
                        .made(LATHE, "HQ310P-C-07")
                        .firstArticle("full", "new part")
                        .toJson());

        files.put(
                "first-article-hq-310-s.csv",
                ReadingsText.wideForm(
                        firstArticle(FIRST_ARTICLE_STARBOARD, starboard, 2, LocalDate.of(2026, 11, 10)),
                        starboard,
                        LATHE));
        files.put(
                "first-article-hq-310-s.job.json",
                carrierJob("J-1177", "B-2202", 2, LocalDate.of(2026, 11, 10))
                        .made(LATHE, "HQ310S-C-03")
                        .firstArticle("full", "new part")
                        .toJson());

        List<Piece> rejected = firstArticle(FIRST_ARTICLE_REJECTED, port, 2, LocalDate.of(2026, 11, 11));
        // Ø64 g6 ends at 63.990: over by 0.004. The perpendicularity was measured on neither piece.
        rejected.get(1).with("4", "63.994");
        rejected.forEach(piece -> piece.without("7"));
        files.put("first-article-rejected.csv", ReadingsText.longForm(rejected, port, OTHER_LATHE));
        files.put(
                "first-article-rejected.job.json",
                carrierJob("J-1178", "B-2203", 2, LocalDate.of(2026, 11, 11))
                        .made(OTHER_LATHE, "HQ310P-C-08")
                        .firstArticle("full", "new machine")
                        .toJson());

        List<Piece> incomplete = firstArticle(FIRST_ARTICLE_INCOMPLETE, port, 2, LocalDate.of(2026, 11, 12));
        incomplete.forEach(piece -> piece.without("3"));
        files.put("first-article-incomplete.csv", ReadingsText.wideForm(incomplete, port, OTHER_LATHE));
        files.put(
                "first-article-incomplete.job.json",
                carrierJob("J-1179", "B-2204", 2, LocalDate.of(2026, 11, 12))
                        .made(OTHER_LATHE, "HQ310P-C-09")
                        .firstArticle("full", "new machine")
                        .toJson());

        List<Piece> guarded = firstArticle(FIRST_ARTICLE_GUARDED, port, 2, LocalDate.of(2026, 11, 13));
        // Inside Ø52 P7 (to 51.979) by 0.0015, which the 0.0025 of the bore gauge does not prove.
        guarded.get(1).with("1", "51.9775");
        files.put("first-article-guarded.csv", ReadingsText.longForm(guarded, port, LATHE));
        files.put(
                "first-article-guarded.job.json",
                carrierJob("J-1180", "B-2205", 2, LocalDate.of(2026, 11, 13))
                        .made(LATHE, "HQ310P-C-07")
                        .firstArticle("full", "order asks for guarded acceptance")
                        .toJson());

        List<Checked> screw = CleatScrew.characteristics();
        files.put(
                "first-article-hq-045.csv",
                ReadingsText.wideForm(
                        firstArticle(FIRST_ARTICLE_INCH, screw, 3, LocalDate.of(2026, 11, 23)), screw, "lathe 1"));
        files.put(
                "first-article-hq-045.job.json",
                new JobText("J-1190", "B-2210", 3, "PO 7802", LocalDate.of(2026, 11, 23))
                        .material("AISI 316", "H60418", "MC-90177")
                        .made("lathe 1", "HQ045-A-02")
                        .firstArticle("full", "new part")
                        .toJson());
    }

    private static void batch2207(Map<String, String> files) {
        List<Checked> port = DrumCarrier.PORT.characteristics();
        List<Piece> pieces = new ArrayList<>();
        for (int i = 1; i <= 125; i++) {
            boolean firstDay = i <= 65;
            LocalDateTime start =
                    firstDay ? LocalDateTime.of(2026, 11, 17, 7, 0) : LocalDateTime.of(2026, 11, 18, 7, 0);
            int since = firstDay ? i - 1 : i - 66;
            pieces.add(new Piece(
                    "2207-%03d".formatted(i), start.plusMinutes(7L * since), firstDay ? "M. Thorne" : "R. Sallow"));
        }
        fill(pieces, port, BATCH_2207, 10, "1");
        files.put("batch-2207.csv", ReadingsText.longForm(pieces, port, LATHE));
        files.put(
                "batch-2207.job.json",
                carrierJob("J-1182", "B-2207", 125, LocalDate.of(2026, 11, 18))
                        .made(LATHE, "HQ310P-C-07")
                        .toJson());
    }

    private static void batch2208(Map<String, String> files) {
        List<Checked> port = DrumCarrier.PORT.characteristics();
        List<Piece> pieces = new ArrayList<>();
        for (int i = 1; i <= 60; i++) {
            pieces.add(new Piece(
                    "2208-%03d".formatted(i),
                    LocalDateTime.of(2026, 11, 19, 7, 0).plusMinutes(7L * (i - 1)),
                    "M. Thorne"));
        }
        fill(pieces, port, BATCH_2208, 10, "");
        // Ø52 P7 ends at 51.979: over by 0.004.
        pieces.get(22).with("1", "51.983").noted("first piece after insert change");
        pieces.get(36).without("5");
        files.put("batch-2208.csv", ReadingsText.longForm(pieces, port, LATHE));
        files.put(
                "batch-2208.job.json",
                carrierJob("J-1183", "B-2208", 60, LocalDate.of(2026, 11, 19))
                        .made(LATHE, "HQ310P-C-07")
                        .toJson());
    }

    private static void batch2209(Map<String, String> files) {
        List<Checked> starboard = DrumCarrier.STARBOARD.characteristics();
        List<Piece> pieces = new ArrayList<>();
        for (int i = 1; i <= 12; i++) {
            pieces.add(new Piece(
                    "2209-%02d".formatted(i),
                    LocalDateTime.of(2026, 11, 20, 7, 0).plusMinutes(7L * (i - 1)),
                    "R. Sallow"));
        }
        fill(pieces, starboard, BATCH_2209, 1, "");
        files.put("batch-2209.csv", ReadingsText.wideForm(pieces, starboard, LATHE));
        files.put(
                "batch-2209.job.json",
                carrierJob("J-1184", "B-2209", 12, LocalDate.of(2026, 11, 20))
                        .made(LATHE, "HQ310S-C-03")
                        .certificate("C-0419")
                        .toJson());
    }

    private static List<Piece> firstArticle(long seed, List<Checked> characteristics, int count, LocalDate day) {
        List<Piece> pieces = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            pieces.add(new Piece("%d-%d".formatted(seed, i), day.atTime(9, 0).plusMinutes(40L * (i - 1)), INSPECTOR));
        }
        for (Checked each : characteristics) {
            SplittableRandom random = stream(seed, each);
            for (Piece piece : pieces) {
                if (each.inspected() != Inspected.NEVER) {
                    piece.with(each.number(), read(each, random, BigDecimal.ZERO));
                }
            }
        }
        return pieces;
    }

    /** Readings of a batch; the characteristic of that number wears. What is only sampled is read on every so many pieces. */
    private static void fill(List<Piece> pieces, List<Checked> characteristics, long seed, int every, String wearing) {
        for (Checked each : characteristics) {
            SplittableRandom random = stream(seed, each);
            for (int i = 0; i < pieces.size(); i++) {
                boolean read = each.inspected() == Inspected.EVERY_PIECE
                        || (each.inspected() == Inspected.SAMPLE && i % every == 0);
                if (read) {
                    BigDecimal moved = each.number().equals(wearing) ? wear(i + 1) : BigDecimal.ZERO;
                    pieces.get(i).with(each.number(), read(each, random, moved));
                }
            }
        }
    }

    private static BigDecimal wear(int piece) {
        return WEAR_PER_PIECE
                .multiply(BigDecimal.valueOf(Math.max(0, piece - EDGE_HOLDS_UNTIL)))
                .negate();
    }

    private static SplittableRandom stream(long seed, Checked characteristic) {
        return new SplittableRandom(1000 * seed + Long.parseLong(characteristic.number()));
    }

    private static String read(Checked characteristic, SplittableRandom random, BigDecimal moved) {
        return characteristic
                .machining()
                .map(machining -> machining.next(random, moved))
                .orElse("pass");
    }

    private static JobText carrierJob(String number, String batch, int quantity, LocalDate date) {
        return new JobText(number, batch, quantity, "PO 7781", date).material("EN AW-6061 T6", "H55213", "MC-90122");
    }
}
