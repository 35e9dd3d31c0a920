package io.github.firstoff.report.section;

import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.inspection.Job;
import io.github.firstoff.inspection.PartRecord;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.PartIdentity;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Block.Fact;
import io.github.firstoff.report.model.Block.FactGroup;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetKind;
import io.github.firstoff.words.Labels;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Who, what and when. What the job lacks is printed as "not stated", so that a gap is seen. */
public final class JobFacts {
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);
    private static final DateTimeFormatter HOUR = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    /** So many serial numbers are printed one by one. */
    private static final int SERIALS = 6;

    private final Sheet sheet;
    private final Job job;
    private final PartIdentity part;

    /** The facts of one sheet. */
    public JobFacts(Sheet sheet) {
        this.sheet = sheet;
        this.job = sheet.job();
        this.part = sheet.plan().part();
    }

    /** Part, order and inspection. */
    public Block block() {
        return new Block.Facts(List.of(part(), order(), inspection()));
    }

    private FactGroup part() {
        List<Fact> facts = new ArrayList<>();
        facts.add(Fact.of(Labels.text("fact.part"), part.number()));
        facts.add(Fact.of(Labels.text("fact.name"), Wording.orNotStated(part.name())));
        facts.add(Fact.of(
                Labels.text("fact.drawing"),
                Labels.text("fact.drawing-revision", Wording.orNotStated(part.drawing()), part.revision())));
        sheet.plan()
                .plan()
                .generalTolerance()
                .ifPresent(general -> facts.add(Fact.of(Labels.text("fact.general-tolerance"), general.text())));
        facts.add(Fact.of(Labels.text("fact.hand"), hand()));
        facts.add(Fact.of(Labels.text("fact.material-required"), Wording.orNotStated(part.material())));
        facts.add(Fact.of(Labels.text("fact.material-delivered"), materials()));
        if (!job.processes().isEmpty()) {
            facts.add(Fact.of(Labels.text("fact.processes"), processes()));
        }
        return new FactGroup(Labels.text("facts.part"), facts);
    }

    /** The hand and the part number of the other one. */
    String hand() {
        return part.hand()
                .map(hand -> part.counterpart()
                        .map(other -> Labels.text(
                                "fact.hand-of-two", Wording.hand(hand), Wording.hand(hand.opposite()), other))
                        .orElseGet(() -> Wording.hand(hand)))
                .orElseGet(() -> Labels.text("fact.no-hand"));
    }

    /** The materials as delivered, a line each, with heat and certificate. */
    String materials() {
        if (job.materials().isEmpty()) {
            return Wording.notStated();
        }
        return job.materials().stream()
                .map(material -> Labels.text(
                        "fact.material.line",
                        material.grade(),
                        Wording.orNotStated(material.heat()),
                        Wording.orNotStated(material.certificate())))
                .collect(Collectors.joining("\n"));
    }

    /** The special processes, a line each, with specification, firm and certificate. */
    String processes() {
        return job.processes().stream()
                .map(process -> Labels.text(
                        "fact.process",
                        process.name(),
                        Wording.orNotStated(process.specification()),
                        Wording.orNotStated(process.by()),
                        Wording.orNotStated(process.certificate())))
                .collect(Collectors.joining("\n"));
    }

    /** Whether every material delivered has the grade that the drawing asks for, letter by letter. */
    boolean isDeliveredAsRequired() {
        return part.material().isPresent()
                && !job.materials().isEmpty()
                && job.materials().stream()
                        .allMatch(each -> each.grade()
                                .strip()
                                .equals(part.material().get().strip()));
    }

    /** Heats and certificates, a line each. */
    String heats() {
        return job.materials().stream()
                .map(material -> Labels.text(
                        "fact.heat", Wording.orNotStated(material.heat()), Wording.orNotStated(material.certificate())))
                .collect(Collectors.joining("\n"));
    }

    private FactGroup order() {
        List<Fact> facts = new ArrayList<>();
        facts.add(Fact.of(Labels.text("fact.customer"), firm(job.customer())));
        facts.add(Fact.of(Labels.text("fact.order"), Wording.orNotStated(job.order())));
        facts.add(Fact.of(Labels.text("fact.job"), Wording.orNotStated(job.job())));
        facts.add(Fact.of(Labels.text("fact.batch"), Wording.orNotStated(job.batch())));
        if (sheet.kind() != SheetKind.FIRST_ARTICLE) {
            facts.add(Fact.of(Labels.text("fact.quantity"), quantity()));
        }
        facts.add(Fact.of(Labels.text("fact.inspected"), pieces()));
        return new FactGroup(Labels.text("facts.order"), facts);
    }

    /** How many pieces the batch has, as the job says. */
    String quantity() {
        return job.quantity().isPresent() ? Wording.pieces(job.quantity().getAsInt()) : Wording.notStated();
    }

    /** The pieces by serial number while they are few, else their number with the first and the last. */
    String pieces() {
        List<String> serials =
                sheet.result().record().parts().stream().map(PartRecord::serial).toList();
        if (serials.isEmpty()) {
            return Labels.text("exceptions.no-piece");
        }
        String counted = Wording.pieces(serials.size());
        if (serials.size() <= SERIALS) {
            return counted + ": " + String.join(", ", serials);
        }
        return Labels.text("fact.pieces-in-order", counted, serials.get(0), serials.get(serials.size() - 1));
    }

    static String firm(Optional<Job.Firm> firm) {
        return firm.map(known -> known.name()
                        + known.address().map(address -> "\n" + address).orElse(""))
                .orElseGet(Wording::notStated);
    }

    static String person(Optional<Job.Person> person) {
        return person.map(known -> known.name()
                        + known.position().map(position -> ", " + position).orElse(""))
                .orElse("");
    }

    private FactGroup inspection() {
        List<Fact> facts = new ArrayList<>();
        if (sheet.kind() == SheetKind.FIRST_ARTICLE) {
            facts.add(Fact.of(
                    Labels.text("fact.kind"),
                    job.firstArticle()
                            .map(article -> switch (article.kind()) {
                                case FULL -> Labels.text("fact.first-article.full");
                                case PARTIAL -> Labels.text("fact.first-article.partial");
                                case DELTA -> Labels.text("fact.first-article.delta");
                            })
                            .orElseGet(Wording::notStated)));
            facts.add(Fact.of(
                    Labels.text("fact.reason"),
                    Wording.orNotStated(job.firstArticle().flatMap(Job.FirstArticleReason::reason))));
        }
        if (sheet.kind() == SheetKind.FIRST_ARTICLE) {
            job.firstArticle()
                    .filter(article -> article.kind() == Job.Kind.DELTA
                            || article.baseline().isPresent()
                            || article.changes().isPresent())
                    .ifPresent(article -> {
                        facts.add(Fact.of(Labels.text("fact.baseline"), Wording.orNotStated(article.baseline())));
                        facts.add(Fact.of(Labels.text("fact.changes"), Wording.orNotStated(article.changes())));
                    });
            if (!sheet.result().uncovered().isEmpty()) {
                facts.add(Fact.of(
                        Labels.text("fact.not-covered"),
                        String.join(
                                ", ",
                                sheet.result().uncovered().stream()
                                        .map(each -> each.number())
                                        .toList())));
            }
        }
        facts.add(Fact.of(Labels.text("fact.machine"), machine()));
        facts.add(Fact.of(Labels.text("fact.program"), Wording.orNotStated(job.program())));
        facts.add(Fact.of(Labels.text("fact.measured"), measured()));
        facts.add(Fact.of(Labels.text("fact.measured-by"), orNotStated(context(each -> each.operator()))));
        facts.add(Fact.of(
                Labels.text("fact.inspector"),
                job.inspector().isPresent() ? person(job.inspector()) : Wording.notStated()));
        facts.add(Fact.of(
                Labels.text("fact.date"), job.date().map(Object::toString).orElseGet(Wording::notStated)));
        return new FactGroup(Labels.text("facts.inspection"), facts);
    }

    /** The machine of the job, or those that the readings name. */
    private String machine() {
        return job.machine().orElseGet(() -> orNotStated(context(each -> each.machine())));
    }

    private static String orNotStated(List<String> names) {
        return names.isEmpty() ? Wording.notStated() : Phrases.listed(names);
    }

    private List<String> context(Function<Reading.Context, Optional<String>> what) {
        return readings()
                .map(judgement -> what.apply(judgement.reading().context()))
                .flatMap(Optional::stream)
                .distinct()
                .toList();
    }

    /** From the first to the last reading with a time. */
    private String measured() {
        TreeSet<LocalDateTime> times = readings()
                .map(judgement -> judgement.reading().context().time())
                .flatMap(Optional::stream)
                .collect(Collectors.toCollection(TreeSet::new));
        if (times.isEmpty()) {
            return Wording.notStated();
        }
        LocalDateTime first = times.first();
        LocalDateTime last = times.last();
        if (first.equals(last)) {
            return MOMENT.format(first);
        }
        boolean oneDay = first.toLocalDate().equals(last.toLocalDate());
        return Wording.span(MOMENT.format(first), (oneDay ? HOUR : MOMENT).format(last));
    }

    private Stream<Judgement> readings() {
        return sheet.result().characteristics().stream().flatMap(each -> each.judgements().stream());
    }
}
