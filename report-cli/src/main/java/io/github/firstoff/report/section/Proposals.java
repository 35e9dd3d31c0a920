package io.github.firstoff.report.section;

import io.github.firstoff.conformance.Judgement;
import io.github.firstoff.inspection.Reading;
import io.github.firstoff.plan.Importance;
import io.github.firstoff.plan.ResolvedCharacteristic;
import io.github.firstoff.sheet.Phrases;
import io.github.firstoff.tolerance.Drawing;
import io.github.firstoff.words.Labels;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;

/** What may be done about an exception: rework where material is left, a concession, a better measurement. */
final class Proposals {
    private final ResolvedCharacteristic characteristic;
    private final String customer;

    Proposals(ResolvedCharacteristic characteristic, String customer) {
        this.characteristic = characteristic;
        this.customer = customer;
    }

    /** For readings that do not conform. */
    String forNonconforming(List<Judgement> concerned) {
        boolean one = concerned.stream().map(Judgement::part).distinct().count() == 1;
        String hold = characteristic.characteristic().importance() == Importance.CRITICAL
                ? Labels.text("proposal.hold", one) + " "
                : "";
        if (concerned.get(0).reading() instanceof Reading.Observed) {
            return hold + Labels.text("proposal.put-right", customer);
        }
        Optional<Drawing.Form> form = characteristic
                .characteristic()
                .requirement()
                .form()
                .or(() -> characteristic.characteristic().options().form());
        boolean above = concerned.stream().allMatch(each -> sign(each) > 0);
        boolean below = concerned.stream().allMatch(each -> sign(each) < 0);
        if (form.isPresent() && (above || below)) {
            boolean left = form.get() == Drawing.Form.HOLE ? below : above;
            boolean hole = form.get() == Drawing.Form.HOLE;
            return hold
                    + (left
                            ? Labels.text("proposal.material-left", hole, customer)
                            : Labels.text("proposal.no-material-left", hole, customer));
        }
        return hold + Labels.text("proposal.rework", customer);
    }

    private static int sign(Judgement judgement) {
        return judgement.departure().map(BigDecimal::signum).orElse(0);
    }

    /** For readings that lie too near a limit for the uncertainty of their gauge. */
    String toProve(List<Judgement> concerned) {
        if (concerned.stream().anyMatch(each -> each.uncertainty().isEmpty())) {
            return Labels.text("proposal.no-uncertainty");
        }
        BigDecimal fraction = characteristic.decision().guardFraction();
        Optional<BigDecimal> room = concerned.stream()
                .map(each -> each.inside().orElse(BigDecimal.ZERO))
                .min(BigDecimal::compareTo)
                .filter(least -> least.signum() > 0)
                .map(least -> fraction.compareTo(BigDecimal.ONE) == 0
                        ? least
                        : least.divide(fraction, new MathContext(2, RoundingMode.DOWN)));
        return room.map(least -> Labels.text(
                        "proposal.finer-than",
                        Figures.with(
                                Figures.minus(Phrases.plain(least)),
                                concerned.get(0).allowed().limits().unit())))
                .orElseGet(() -> Labels.text("proposal.finer"));
    }
}
