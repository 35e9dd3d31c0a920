package io.github.firstoff.sheet;

import io.github.firstoff.conformance.SheetVerdict;
import io.github.firstoff.conformance.Verdict;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * A study of drift, ready to be told.
 *
 * @param sheet part, job, verdicts and where they come from
 * @param options what was asked
 * @param findings one for each characteristic and batch that was followed, those that need attention first
 * @param left the characteristics that were not followed, and why
 */
public record DriftSheet(Sheet sheet, DriftOptions options, List<DriftFinding> findings, List<Left> left)
        implements Told {
    /** Copies the lists. */
    public DriftSheet {
        findings = List.copyOf(findings);
        left = List.copyOf(left);
    }

    /**
     * A characteristic that was not followed.
     *
     * @param number its number
     * @param why why
     * @param particulars what the words about it name
     */
    public record Left(String number, Why why, List<Object> particulars) {
        /** Copies the list. */
        public Left {
            particulars = List.copyOf(particulars);
        }

        /** Why, in a clause without a stop that has this characteristic as its subject. */
        public String reason() {
            return reason(1);
        }

        /** The same of so many characteristics. */
        public String reason(int count) {
            List<Object> arguments = new ArrayList<>(particulars);
            arguments.add(0, count);
            return Labels.text(why.key, arguments.toArray());
        }
    }

    /** Which characteristics were not followed and why, each reason once. */
    public static String told(List<Left> left) {
        Map<String, List<Left>> byReason = new LinkedHashMap<>();
        left.forEach(each -> byReason.computeIfAbsent(each.reason(), reason -> new ArrayList<>())
                .add(each));
        return byReason.values().stream()
                .map(group -> Labels.text(
                        "drift.left-out",
                        Phrases.listed(group.stream().map(Left::number).toList()),
                        group.get(0).reason(group.size())))
                .collect(Collectors.joining("; "));
    }

    /** Why a characteristic was not followed. */
    public enum Why {
        /** It is not measured: pass or fail, or a count. */
        ATTRIBUTE("drift.left.attribute"),
        /** There is no reading. */
        NOT_MEASURED("drift.left.not-measured"),
        /** There are too few readings: how many, of which file, from which line on, and how many it takes. */
        TOO_FEW("drift.left.too-few");

        private final String key;

        Why(String key) {
            this.key = key;
        }
    }

    /** The verdict on the readings that were followed, and on no others. */
    public SheetVerdict verdict() {
        Verdict worst = Verdict.CONFORMING;
        for (DriftFinding each : findings) {
            worst = worst.worse(each.verdict());
        }
        return switch (worst) {
            case CONFORMING -> SheetVerdict.ACCEPTED;
            case INCONCLUSIVE -> SheetVerdict.INCONCLUSIVE;
            case NONCONFORMING -> SheetVerdict.REJECTED;
            case NOT_MEASURED -> SheetVerdict.INCOMPLETE;
        };
    }

    @Override
    public Provenance provenance() {
        return sheet.provenance();
    }

    @Override
    public List<Remark> remarks() {
        return sheet.remarks();
    }
}
