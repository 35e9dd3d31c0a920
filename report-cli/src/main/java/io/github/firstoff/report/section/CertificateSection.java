package io.github.firstoff.report.section;

import io.github.firstoff.inspection.Job;
import io.github.firstoff.plan.PartIdentity;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Block.Fact;
import io.github.firstoff.report.model.Block.FactGroup;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.report.model.Tone;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.sheet.Sheet;
import java.util.ArrayList;
import java.util.List;

/**
 * The declaration itself, with the content that ISO/IEC 17050-1:2004, clause 6 asks of a supplier's declaration: its number, the
 * issuer, the object, the statement, the requirements, date and place of issue, and who signs. The layout is our own.
 */
public final class CertificateSection {
    private final Sheet sheet;
    private final Job job;
    private final PartIdentity part;
    private final JobFacts facts;

    /** The declaration of one sheet. */
    public CertificateSection(Sheet sheet) {
        this.sheet = sheet;
        this.job = sheet.job();
        this.part = sheet.plan().part();
        this.facts = new JobFacts(sheet);
    }

    /** The statement in the largest type, and what it rests on. */
    public List<Block> statement() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Headline(Text.of(sentence()), Tone.GOOD));
        blocks.add(new Block.Paragraph(Text.of(basis())));
        return blocks;
    }

    String sentence() {
        String issuer = job.issuer().map(Job.Firm::name).orElse("The issuer");
        return issuer + " declares: " + pieces() + " " + (inspected() == 1 ? "conforms" : "conform") + " to drawing "
                + part.drawing().orElse(part.number()) + ", revision " + part.revision() + bySample() + ".";
    }

    /** The statement itself says what was not measured on every piece. */
    private String bySample() {
        int judged = sheet.result().judged().size();
        return sampled() == 0
                ? ""
                : sampled() == judged
                        ? ", by a sample of them"
                        : ", " + sampled() + " of " + judged + " characteristics by a sample of them";
    }

    private long sampled() {
        return sheet.result().judged().stream()
                .filter(each -> Wording.isSampled(sheet, each))
                .count();
    }

    private int inspected() {
        return sheet.pieces();
    }

    /** The pieces that the statement speaks of: those inspected, never more. */
    private String pieces() {
        int quantity = job.quantity().orElse(inspected());
        String batch = job.batch().map(name -> ", batch " + name + ",").orElse("");
        if (inspected() < quantity) {
            return "the " + Phrases.counted(inspected(), "piece", "pieces") + " inspected, of " + quantity + " of "
                    + part.number() + (batch.isEmpty() ? "," : batch);
        }
        return "the " + (inspected() == 1 ? "piece" : inspected() + " pieces") + " of " + part.number() + batch;
    }

    private String basis() {
        int judged = sheet.result().judged().size();
        String rule = Wording.rule(sheet);
        StringBuilder text = new StringBuilder("Inspected for ")
                .append(Phrases.counted(judged, "characteristic", "characteristics"))
                .append(rule.isEmpty() ? "" : ", decided " + rule)
                .append(sampled() > 0 ? "; the table gives the pieces for each" : "")
                .append('.');
        int quantity = job.quantity().orElse(inspected());
        if (inspected() < quantity) {
            text.append(" ")
                    .append(inspected())
                    .append(" of ")
                    .append(quantity)
                    .append(" pieces were inspected; nothing is said here of measurements on the other ")
                    .append(quantity - inspected())
                    .append('.');
        }
        return text.toString();
    }

    /** Issuer, object and delivery. */
    public Block facts() {
        return new Block.Facts(List.of(declaration(), object(), delivery()));
    }

    private FactGroup declaration() {
        List<Fact> list = new ArrayList<>();
        list.add(Fact.of("number", Wording.orNotStated(job.certificateNumber())));
        list.add(Fact.of("issuer", JobFacts.firm(job.issuer())));
        list.add(Fact.of("date of issue", job.date().map(Object::toString).orElse(Wording.NOT_STATED)));
        list.add(Fact.of("place of issue", Wording.orNotStated(job.issuer().flatMap(Job.Firm::address))));
        if (facts.isDeliveredAsRequired()) {
            list.add(Fact.of("material", part.material().orElseThrow() + "\n" + facts.heats()));
        } else {
            list.add(Fact.of("material required", Wording.orNotStated(part.material())));
            list.add(Fact.of("material delivered", facts.materials()));
        }
        return new FactGroup("Declaration and material", list);
    }

    private FactGroup object() {
        List<Fact> list = new ArrayList<>();
        list.add(Fact.of("part", part.number()));
        list.add(Fact.of("name", Wording.orNotStated(part.name())));
        list.add(Fact.of("drawing", Wording.orNotStated(part.drawing()) + ", revision " + part.revision()));
        sheet.plan()
                .plan()
                .generalTolerance()
                .ifPresent(general -> list.add(Fact.of("general tolerance", general.text())));
        list.add(Fact.of("hand", facts.hand()));
        return new FactGroup("Object and requirements", list);
    }

    private FactGroup delivery() {
        List<Fact> list = new ArrayList<>();
        list.add(Fact.of("customer", JobFacts.firm(job.customer())));
        list.add(Fact.of("order", Wording.orNotStated(job.order())));
        list.add(Fact.of("job", Wording.orNotStated(job.job())));
        list.add(Fact.of("batch", Wording.orNotStated(job.batch())));
        list.add(Fact.of("delivered", facts.quantity()));
        list.add(Fact.of("inspected", facts.pieces()));
        return new FactGroup("Delivery", list);
    }

    /** How to read the table, what the declaration does not say, and where its readings are kept. */
    public Block notes(String legend, String fits) {
        String hash = sheet.provenance().shortHash();
        return new Block.Note(Text.of(legend
                + " Theoretically exact and reference dimensions are not judged and not listed. The"
                + " readings are kept by the issuer under data " + hash + "." + (fits.isEmpty() ? "" : " " + fits)));
    }
}
