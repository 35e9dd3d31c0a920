package io.github.firstoff.report.section;

import io.github.firstoff.inspection.Job;
import io.github.firstoff.plan.PartIdentity;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Block.Fact;
import io.github.firstoff.report.model.Block.FactGroup;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.report.model.Tone;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.words.Labels;
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
        String issuer = job.issuer().map(Job.Firm::name).orElseGet(() -> Labels.text("certificate.the-issuer"));
        return Labels.text(
                "certificate.declares",
                issuer,
                pieces(),
                inspected(),
                part.drawing().orElse(part.number()),
                part.revision(),
                bySample());
    }

    /** The statement itself says what was not measured on every piece. */
    private String bySample() {
        int judged = sheet.result().judged().size();
        return sampled() == 0
                ? ""
                : sampled() == judged
                        ? Labels.text("certificate.sample-all")
                        : Labels.text("certificate.sample-some", sampled(), judged);
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
        String batch =
                job.batch().map(name -> Labels.text("certificate.batch", name)).orElse("");
        if (inspected() < quantity) {
            return Labels.text(
                    "certificate.pieces-inspected",
                    Wording.pieces(inspected()),
                    quantity,
                    part.number(),
                    batch.isEmpty() ? "," : batch);
        }
        return Labels.text("certificate.pieces", inspected(), part.number(), batch);
    }

    private String basis() {
        int judged = sheet.result().judged().size();
        String rule = Wording.rule(sheet);
        String basis = Labels.text(
                "certificate.basis",
                Wording.characteristicsCounted(judged),
                rule.isEmpty() ? "" : Labels.text("certificate.decided", rule),
                sampled() > 0 ? Labels.text("certificate.pieces-in-table") : "");
        StringBuilder text = new StringBuilder(basis);
        int quantity = job.quantity().orElse(inspected());
        if (inspected() < quantity) {
            text.append(' ').append(Labels.text("certificate.rest", inspected(), quantity, quantity - inspected()));
        }
        return text.toString();
    }

    /** Issuer, object and delivery. */
    public Block facts() {
        return new Block.Facts(List.of(declaration(), object(), delivery()));
    }

    private FactGroup declaration() {
        List<Fact> list = new ArrayList<>();
        list.add(Fact.of(Labels.text("fact.certificate-number"), Wording.orNotStated(job.certificateNumber())));
        job.inspectionDocument()
                .ifPresent(type -> list.add(Fact.of(
                        Labels.text("fact.inspection-document"),
                        switch (type) {
                            case TYPE_2_1 -> Labels.text("document.type-2-1");
                            case TYPE_2_2 -> Labels.text("document.type-2-2");
                            case TYPE_3_1 -> Labels.text("document.type-3-1");
                            case TYPE_3_2 -> Labels.text("document.type-3-2");
                        })));
        list.add(Fact.of(Labels.text("fact.issuer"), JobFacts.firm(job.issuer())));
        list.add(Fact.of(
                Labels.text("fact.date-of-issue"),
                job.date().map(Object::toString).orElseGet(Wording::notStated)));
        list.add(Fact.of(
                Labels.text("fact.place-of-issue"),
                Wording.orNotStated(job.issuer().flatMap(Job.Firm::address))));
        if (facts.isDeliveredAsRequired()) {
            list.add(Fact.of(Labels.text("fact.material"), part.material().orElseThrow() + "\n" + facts.heats()));
        } else {
            list.add(Fact.of(Labels.text("fact.material-required"), Wording.orNotStated(part.material())));
            list.add(Fact.of(Labels.text("fact.material-delivered"), facts.materials()));
        }
        return new FactGroup(Labels.text("facts.declaration"), list);
    }

    private FactGroup object() {
        List<Fact> list = new ArrayList<>();
        list.add(Fact.of(Labels.text("fact.part"), part.number()));
        list.add(Fact.of(Labels.text("fact.name"), Wording.orNotStated(part.name())));
        list.add(Fact.of(
                Labels.text("fact.drawing"),
                Labels.text("fact.drawing-revision", Wording.orNotStated(part.drawing()), part.revision())));
        sheet.plan()
                .plan()
                .generalTolerance()
                .ifPresent(general -> list.add(Fact.of(Labels.text("fact.general-tolerance"), general.text())));
        list.add(Fact.of(Labels.text("fact.hand"), facts.hand()));
        if (!job.processes().isEmpty()) {
            list.add(Fact.of(Labels.text("fact.processes"), facts.processes()));
        }
        return new FactGroup(Labels.text("facts.object"), list);
    }

    private FactGroup delivery() {
        List<Fact> list = new ArrayList<>();
        list.add(Fact.of(Labels.text("fact.customer"), JobFacts.firm(job.customer())));
        list.add(Fact.of(Labels.text("fact.order"), Wording.orNotStated(job.order())));
        list.add(Fact.of(Labels.text("fact.job"), Wording.orNotStated(job.job())));
        list.add(Fact.of(Labels.text("fact.batch"), Wording.orNotStated(job.batch())));
        list.add(Fact.of(Labels.text("fact.delivered"), facts.quantity()));
        list.add(Fact.of(Labels.text("fact.inspected"), facts.pieces()));
        return new FactGroup(Labels.text("facts.delivery"), list);
    }

    /** How to read the table, what the declaration does not say, and where its readings are kept. */
    public Block notes(String legend, String fits) {
        String hash = sheet.provenance().shortHash();
        return new Block.Note(
                Text.of(legend + " " + Labels.text("certificate.kept", hash) + (fits.isEmpty() ? "" : " " + fits)));
    }
}
