package io.github.firstoff.command;

import io.github.firstoff.intake.Fault;
import io.github.firstoff.intake.Notice;
import io.github.firstoff.intake.PlanDraft;
import io.github.firstoff.plan.Characteristic;
import io.github.firstoff.plan.PartIdentity;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.sheet.JsonDocument;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.tolerance.Limits;
import io.github.firstoff.tolerance.Requirement.Nature;
import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What a plan that was made says, characteristic by characteristic, with the limits in figures. */
final class PlanListing {
    private static final List<String> HEADING =
            List.of("No.", "Feature", "Requirement", "Lower", "Upper", "Unit", "Class", "Gauge", "Study");
    private static final int WIDEST = 56;

    private final PlanDraft draft;
    private final ResolvedPlan plan;
    private final @Nullable Path written;

    PlanListing(PlanDraft draft, @Nullable Path written) {
        this.draft = draft;
        this.plan = draft.plan();
        this.written = written;
    }

    /** The listing as lines for a terminal. */
    List<String> lines() {
        PartIdentity part = plan.part();
        List<String> lines = new ArrayList<>();
        StringBuilder head = new StringBuilder("Plan: ")
                .append(part.number())
                .append(" revision ")
                .append(part.revision());
        part.hand().ifPresent(hand -> head.append(", ").append(hand.word()));
        part.name().ifPresent(name -> head.append(", ").append(name));
        head.append(". Sizes in ").append(plan.plan().unit().word());
        plan.plan()
                .generalTolerance()
                .ifPresent(general -> head.append(", general tolerance ").append(general.text()));
        lines.add(head.append('.').toString());
        List<List<String>> rows = new ArrayList<>();
        rows.add(HEADING);
        plan.characteristics().forEach(each -> rows.add(row(each)));
        int[] widths = new int[HEADING.size()];
        for (List<String> row : rows) {
            for (int i = 0; i < widths.length; i++) {
                widths[i] = Math.max(widths[i], Math.min(WIDEST, row.get(i).length()));
            }
        }
        rows.forEach(row -> lines.add(aligned(row, widths)));
        lines.add(Phrases.counted(plan.characteristics().size(), "characteristic", "characteristics")
                + ". Check each line against the drawing before the plan is used.");
        if (written != null) {
            lines.add("Written: " + written);
        }
        return lines;
    }

    private static String aligned(List<String> row, int[] widths) {
        StringBuilder line = new StringBuilder();
        for (int i = 0; i < widths.length; i++) {
            String text = row.get(i);
            line.append(text).append(" ".repeat(Math.max(0, widths[i] - text.length()) + 2));
        }
        return line.toString().stripTrailing();
    }

    private List<String> row(ResolvedCharacteristic resolved) {
        Characteristic characteristic = resolved.characteristic();
        return List.of(
                resolved.number(),
                characteristic.feature(),
                characteristic.printed(),
                lower(resolved).orElse(""),
                upper(resolved).orElse(resolved.isJudged() && resolved.limits().isOpen() ? "pass/fail" : ""),
                unit(resolved),
                characteristic.importance().word(),
                characteristic.gauge().orElse(""),
                study(characteristic) + bonus(resolved));
    }

    private static String unit(ResolvedCharacteristic resolved) {
        Nature nature = resolved.characteristic().requirement().nature();
        if (nature == Nature.REFERENCE || nature == Nature.EXACT) {
            return "not judged";
        }
        return resolved.limits().isOpen() ? "" : resolved.limits().unit().word();
    }

    private static Optional<String> lower(ResolvedCharacteristic resolved) {
        return resolved.limits().lower().map(BigDecimal::toPlainString);
    }

    private static Optional<String> upper(ResolvedCharacteristic resolved) {
        return resolved.limits().upper().map(BigDecimal::toPlainString);
    }

    private static String study(Characteristic characteristic) {
        return characteristic
                .study()
                .map(study -> study.chart()
                        + (study.grouping().size().isPresent()
                                ? " " + study.grouping().size().getAsInt()
                                : ""))
                .orElse("");
    }

    private static String bonus(ResolvedCharacteristic resolved) {
        return resolved.zone().isFixed()
                ? ""
                : resolved.characteristic()
                        .options()
                        .sizeFeature()
                        .map(feature -> "bonus from " + feature)
                        .orElse("");
    }

    /** The listing as one JSON document. */
    void json(Writer writer) {
        JsonDocument.write(writer, out -> {
            out.text("command", "plan");
            out.text("source", draft.source());
            out.text("part", plan.part().number());
            out.text("revision", plan.part().revision());
            out.text("unit", plan.plan().unit().word());
            out.array("characteristics", () -> {
                for (ResolvedCharacteristic each : plan.characteristics()) {
                    out.item(() -> characteristic(out, each));
                }
            });
            out.texts("notices", draft.notices().stream().map(Notice::line).toList());
            if (written != null) {
                out.text("written", written.toString());
            }
        });
    }

    private void characteristic(JsonDocument out, ResolvedCharacteristic resolved) throws IOException {
        Characteristic characteristic = resolved.characteristic();
        Limits limits = resolved.limits();
        out.text("number", resolved.number());
        out.text("feature", characteristic.feature());
        out.text("requirement", characteristic.printed());
        out.text("lower", lower(resolved));
        out.text("upper", upper(resolved));
        if (!limits.isOpen()) {
            out.text("unit", limits.unit().word());
        }
        out.flag("judged", resolved.isJudged());
        out.text("class", characteristic.importance().word());
        if (characteristic.gauge().isPresent()) {
            out.text("gauge", characteristic.gauge());
        }
        if (characteristic.study().isPresent()) {
            out.text("study", study(characteristic));
        }
        Optional<String> place = draft.place(resolved.number()).map(Fault.Where::toString);
        if (place.isPresent()) {
            out.text("place", place);
        }
    }
}
