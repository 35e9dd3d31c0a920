package io.github.firstoff.intake;

import io.github.firstoff.plan.Characteristic.Extent;
import io.github.firstoff.plan.Demand;
import io.github.firstoff.plan.Importance;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads what each class of characteristics demands: the plan's {@code "classes"}. */
final class ClassReader {
    private static final List<String> INDICES = List.of("cp", "cpk", "pp", "ppk", "cpm");

    private ClassReader() {}

    static Map<Importance, Demand> read(Fields document) {
        Map<Importance, Demand> demands = new EnumMap<>(Importance.class);
        Optional<Fields> classes = document.object("classes");
        if (classes.isEmpty()) {
            return demands;
        }
        for (Importance importance : Importance.values()) {
            classes.get().object(importance.word()).ifPresent(fields -> demands.put(importance, demand(fields)));
        }
        classes.get().finish();
        return demands;
    }

    private static Demand demand(Fields fields) {
        Optional<Extent> extent = extent(fields);
        boolean study = fields.flag("study").orElse(false);
        Map<String, BigDecimal> minimum = new LinkedHashMap<>();
        fields.object("minimum").ifPresent(indices -> {
            for (String index : INDICES) {
                indices.decimal(index, false).ifPresent(least -> minimum.put(index, least));
            }
            indices.finish();
        });
        fields.finish();
        return new Demand(extent.filter(Extent.EVERY_PIECE::equals).isPresent(), study, minimum);
    }

    /** How many pieces are inspected, as a class or a characteristic says it. */
    static Optional<Extent> extent(Fields fields) {
        return fields.word(
                "inspect",
                word -> Arrays.stream(Extent.values())
                        .filter(each -> each.word().equalsIgnoreCase(word))
                        .findFirst(),
                Arrays.stream(Extent.values()).map(Extent::word).toList());
    }
}
