package io.github.firstoff.intake;

import io.github.firstoff.assembly.DimensionLoop;
import io.github.firstoff.plan.Hand;
import io.github.firstoff.quantity.Unit;
import io.github.firstoff.tolerance.Limits;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A file of the members of a dimension loop as it was read. The format is {@code firstoff-stack-1}; see {@code docs/stack.md} and
 * {@code docs/schemas/stack.schema.json}.
 */
public final class StackFile {
    /** The schema's name in stack files. */
    public static final String SCHEMA = "firstoff-stack-1";

    private static final long LARGEST = 16L * 1024 * 1024;
    private static final BigDecimal USUAL_SIGMAS = new BigDecimal("3");
    private static final BigDecimal MOST_SIGMAS = new BigDecimal("20");
    private static final String DISTRIBUTION = "distribution";
    private static final List<String> DISTRIBUTIONS = List.of("normal", "uniform", "measured");

    private final SourceText source;
    private final DimensionLoop loop;
    private final List<Notice> notices;

    private StackFile(SourceText source, DimensionLoop loop, List<Notice> notices) {
        this.source = source;
        this.loop = loop;
        this.notices = List.copyOf(notices);
    }

    /**
     * Reads a file of members.
     *
     * @throws InputRefused with every fault of the file
     */
    public static StackFile read(Path path) {
        return read(Input.file(path));
    }

    /**
     * Reads members.
     *
     * @throws InputRefused with every fault of the input
     */
    public static StackFile read(Input input) {
        SourceText source = SourceText.of(input, LARGEST, OtherFile.Wanted.STACK);
        FaultCollector faults = new FaultCollector();
        Optional<DimensionLoop> loop = AssemblyFile.document(source, faults, "a file of members")
                .flatMap(document -> new Reading(source, faults).loop(document));
        faults.inFileOrder().throwIfAny();
        return new StackFile(
                source,
                loop.orElseThrow(() -> new IllegalStateException("a loop without a fault was not read")),
                faults.notices());
    }

    private static final class Reading {
        private final SourceText source;
        private final FaultCollector faults;

        Reading(SourceText source, FaultCollector faults) {
            this.source = source;
            this.faults = faults;
        }

        Optional<DimensionLoop> loop(Fields document) {
            SchemaName.check(document, SCHEMA);
            Optional<String> name = document.text("name");
            Optional<String> part = document.text("part");
            Optional<Hand> hand = StatedHand.of(document);
            Unit unit = document.word(
                            "unit",
                            word -> Unit.parse(word).filter(each -> each == Unit.MILLIMETRE || each == Unit.INCH),
                            List.of("mm", "inch"))
                    .orElse(Unit.MILLIMETRE);
            LimitsReader limits = new LimitsReader(source, faults, unit);
            Optional<Gap> gap = gap(document, limits, unit);
            document.required("members", document.value("members"), "a list of at least one member");
            List<DimensionLoop.Member> members = new ArrayList<>();
            List<Fields> entries = document.objects("members", "a member, which is an object { … }");
            boolean emptyList = document.value("members").orElse(null) instanceof JsonValue.Array array
                    && array.items().isEmpty();
            if (emptyList) {
                document.refuse("members", FaultKind.EMPTY, "", "an empty list", "at least one member");
            }
            for (Fields entry : entries) {
                member(entry, limits, hand).ifPresent(members::add);
            }
            document.finish();
            if (!faults.isEmpty() || members.isEmpty()) {
                return Optional.empty();
            }
            return Optional.of(new DimensionLoop(
                    name.orElse("gap"),
                    part,
                    hand,
                    unit,
                    gap.map(Gap::limits).orElse(Limits.none(unit)),
                    gap.map(Gap::printed),
                    members));
        }

        private record Gap(Limits limits, String printed) {}

        private static Optional<Gap> gap(Fields document, LimitsReader limits, Unit unit) {
            Optional<JsonValue> value = document.value("gap");
            if (value.isPresent() && value.get() instanceof JsonValue.Obj) {
                return document.object("gap").flatMap(fields -> {
                    Optional<BigDecimal> least = fields.decimal("minimum");
                    Optional<BigDecimal> greatest = fields.decimal("maximum");
                    fields.finish();
                    if (least.isPresent() && greatest.isPresent() && least.get().compareTo(greatest.get()) > 0) {
                        fields.refuse(
                                "minimum",
                                FaultKind.CONTRADICTION,
                                "the least gap is above the greatest",
                                least.get().toPlainString(),
                                "at most " + greatest.get().toPlainString());
                        return Optional.empty();
                    }
                    String printed = least.map(BigDecimal::toPlainString).orElse("")
                            + ".."
                            + greatest.map(BigDecimal::toPlainString).orElse("");
                    return Optional.of(new Gap(new Limits(least, greatest, false, unit), printed));
                });
            }
            return limits.read(document, "gap", Optional.empty(), false)
                    .map(found -> new Gap(found.limits(), found.printed()));
        }

        private Optional<DimensionLoop.Member> member(Fields entry, LimitsReader limits, Optional<Hand> hand) {
            long before = faults.count();
            Optional<String> name = entry.requiredText("name", "what the dimension is");
            Fields fields = name.map(known -> entry.renamed("member " + Echo.plain(known)))
                    .orElse(entry);
            StatedHand.ofMember(fields, "the loop", hand);
            Optional<BigDecimal> direction = fields.required(
                    "direction",
                    direction(fields),
                    "1 or \"+\" where the gap grows with the dimension, -1 or \"-\" where it shrinks");
            BigDecimal sensitivity = fields.decimal("sensitivity", false).orElse(BigDecimal.ONE);
            Optional<LimitsReader.Limited> limited = limits.read(fields, "requirement", Optional.empty(), true);
            Optional<List<BigDecimal>> readings = readings(fields);
            Optional<DimensionLoop.Distribution> distribution = distribution(fields, limited.isPresent(), readings);
            fields.finish();
            if (faults.count() > before) {
                return Optional.empty();
            }
            return name.flatMap(known -> direction.flatMap(sign -> distribution.map(spread -> new DimensionLoop.Member(
                    known,
                    sign.multiply(sensitivity),
                    limited.map(LimitsReader.Limited::printed).orElse(""),
                    limited.flatMap(LimitsReader.Limited::nominal),
                    limited.map(LimitsReader.Limited::limits),
                    spread))));
        }

        private static Optional<BigDecimal> direction(Fields fields) {
            Optional<JsonValue> value = fields.value("direction");
            if (value.isEmpty()) {
                return Optional.empty();
            }
            String text = value.get() instanceof JsonValue.Numeral number
                    ? number.literal()
                    : value.get() instanceof JsonValue.Text written ? written.text() : "";
            return switch (text.strip().toLowerCase(Locale.ROOT)) {
                case "1", "+1", "+", "plus" -> Optional.of(BigDecimal.ONE);
                case "-1", "-", "−", "−1", "minus" -> Optional.of(BigDecimal.ONE.negate());
                default -> {
                    fields.refuse(
                            "direction",
                            FaultKind.UNKNOWN_WORD,
                            "",
                            value.get().described(),
                            "1 or \"+\" where the gap grows with the dimension, -1 or \"-\" where it shrinks");
                    yield Optional.empty();
                }
            };
        }

        private Optional<List<BigDecimal>> readings(Fields fields) {
            Optional<JsonValue> value = fields.value("readings");
            if (value.isEmpty()) {
                return Optional.empty();
            }
            String expected = "a list of at least two sizes, such as [\"12.49\", \"12.51\"]";
            if (!(value.get() instanceof JsonValue.Array array)) {
                fields.refuse("readings", FaultKind.WRONG_TYPE, "", value.get().described(), expected);
                return Optional.empty();
            }
            long before = faults.count();
            List<BigDecimal> found = new ArrayList<>();
            for (JsonValue item : array.items()) {
                try {
                    if (item instanceof JsonValue.Numeral number) {
                        found.add(ExactNumber.literal(number.literal()));
                    } else if (item instanceof JsonValue.Text text) {
                        found.add(ExactNumber.written(text.text().strip()));
                    } else {
                        refuse(fields, item, FaultKind.WRONG_TYPE, "", ExactNumber.EXAMPLE);
                    }
                } catch (NumberRefused refused) {
                    refuse(fields, item, refused.kind(), refused.message(), refused.expected());
                }
            }
            if (array.items().size() < 2) {
                fields.refuse(
                        "readings",
                        FaultKind.EMPTY,
                        "one size says nothing of how sizes are spread",
                        "a sample of " + array.items().size(),
                        expected);
                return Optional.empty();
            }
            return faults.count() == before ? Optional.of(found) : Optional.empty();
        }

        private void refuse(Fields fields, JsonValue item, FaultKind kind, String message, String expected) {
            faults.refuse(Fault.of(
                    kind,
                    new Fault.Where(source.name(), item.at().line(), item.at().column(), fields.labelOf("readings")),
                    message,
                    item.described(),
                    expected));
        }

        private static Optional<DimensionLoop.Distribution> distribution(
                Fields fields, boolean limited, Optional<List<BigDecimal>> readings) {
            Optional<BigDecimal> sigmas = fields.decimal("sigmas", false);
            if (sigmas.isPresent() && sigmas.get().compareTo(MOST_SIGMAS) > 0) {
                fields.refuse(
                        "sigmas",
                        FaultKind.NUMBER_OUT_OF_RANGE,
                        "",
                        sigmas.get().toPlainString(),
                        "standard deviations from the middle to a limit, such as 3");
            }
            if (fields.value(DISTRIBUTION).orElse(null) instanceof JsonValue.Obj) {
                return fields.object(DISTRIBUTION).flatMap(stated -> {
                    Optional<BigDecimal> mean = stated.required("mean", stated.decimal("mean"), ExactNumber.EXAMPLE);
                    Optional<BigDecimal> deviation = stated.required(
                            "standardDeviation", stated.decimal("standardDeviation", true), ExactNumber.EXAMPLE);
                    stated.finish();
                    return mean.flatMap(m -> deviation.map(s -> new DimensionLoop.Stated(m, s)));
                });
            }
            Optional<String> word = fields.word(
                    DISTRIBUTION,
                    text -> Optional.of(text.toLowerCase(Locale.ROOT)).filter(DISTRIBUTIONS::contains),
                    DISTRIBUTIONS);
            if (fields.value(DISTRIBUTION).isPresent() && word.isEmpty()) {
                return Optional.empty();
            }
            String kind = word.orElse(fields.value("readings").isPresent() ? "measured" : "normal");
            if (kind.equals("measured")) {
                if (fields.value("readings").isEmpty()) {
                    fields.refuse(
                            DISTRIBUTION,
                            FaultKind.CONTRADICTION,
                            "nothing was measured",
                            Echo.quoted("measured"),
                            "\"readings\" beside it");
                }
                return readings.map(DimensionLoop.Measured::new);
            }
            if (!limited) {
                if (fields.value("requirement").isEmpty()) {
                    fields.required(
                            "requirement",
                            Optional.empty(),
                            "a size with two limits, or \"readings\", or a \"distribution\" with mean and standardDeviation");
                }
                return Optional.empty();
            }
            return Optional.of(
                    kind.equals("uniform")
                            ? new DimensionLoop.Uniform()
                            : new DimensionLoop.WithinLimits(sigmas.orElse(USUAL_SIGMAS)));
        }
    }

    /** What the file states. */
    public DimensionLoop loop() {
        return loop;
    }

    /** What does not hinder but should be known. */
    public List<Notice> notices() {
        return notices;
    }

    /** The file's name as the user gave it. */
    public String name() {
        return source.name();
    }

    /** The SHA-256 of the file's bytes in hexadecimal. */
    public String sha256() {
        return source.sha256();
    }
}
