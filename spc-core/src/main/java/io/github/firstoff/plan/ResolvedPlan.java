package io.github.firstoff.plan;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A plan whose every requirement has its limits. Made by {@link InspectionPlan#resolve()}. */
public final class ResolvedPlan {
    private final InspectionPlan plan;
    private final List<ResolvedCharacteristic> characteristics;
    private final Map<String, ResolvedCharacteristic> byNumber;

    ResolvedPlan(InspectionPlan plan, List<ResolvedCharacteristic> characteristics) {
        this.plan = plan;
        this.characteristics = List.copyOf(characteristics);
        this.byNumber = new LinkedHashMap<>();
        for (ResolvedCharacteristic each : characteristics) {
            byNumber.put(each.number(), each);
        }
    }

    /** The plan as written. */
    public InspectionPlan plan() {
        return plan;
    }

    /** Which part this is about. */
    public PartIdentity part() {
        return plan.part();
    }

    /** All characteristics, in the plan's order. */
    public List<ResolvedCharacteristic> characteristics() {
        return characteristics;
    }

    /** The characteristic of that number; empty if the plan has none. */
    public Optional<ResolvedCharacteristic> find(String number) {
        return Optional.ofNullable(byNumber.get(number));
    }

    /** The gauge of that number; empty if the plan lists none. */
    public Optional<Gauge> gauge(String id) {
        return plan.gauge(id);
    }
}
