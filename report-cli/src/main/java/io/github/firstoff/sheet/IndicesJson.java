package io.github.firstoff.sheet;

import com.fasterxml.jackson.core.JsonGenerator;
import io.github.firstoff.study.capability.Capability;
import io.github.firstoff.study.capability.DistributionCandidate;
import io.github.firstoff.study.capability.DistributionChoice;
import io.github.firstoff.study.capability.Index;
import io.github.firstoff.study.capability.Nonconforming;
import io.github.firstoff.study.capability.TrendedCapability;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Indices and their intervals in the JSON result. */
final class IndicesJson {
    private IndicesJson() {}

    static void write(JsonGenerator out, Capability capability) throws IOException {
        out.writeObjectFieldStart("indices");
        for (Index index : capability.indices()) {
            String name = jsonName(index);
            if (index.value().isPresent() && Double.isFinite(index.value().getAsDouble())) {
                out.writeNumberField(name, index.value().getAsDouble());
            } else {
                out.writeNullField(name);
            }
        }
        out.writeEndObject();
        out.writeObjectFieldStart("intervals");
        out.writeNumberField("level", capability.level());
        for (Index index : capability.indices()) {
            interval(out, jsonName(index), index);
        }
        out.writeEndObject();
    }

    /** The distribution that the evidence chose, and the performance indices by its percentiles; equal to the others if normal. */
    static void writeFitted(JsonGenerator out, Capability chosen) throws IOException {
        out.writeObjectFieldStart("fitted");
        out.writeStringField(
                "distribution", chosen.distribution().method().family().name());
        out.writeStringField("reason", chosen.distribution().reason());
        for (Index index : chosen.indices()) {
            if (index.name().startsWith("P")
                    && index.value().isPresent()
                    && Double.isFinite(index.value().getAsDouble())) {
                out.writeNumberField(jsonName(index), index.value().getAsDouble());
            }
        }
        evidence(out, chosen.distribution());
        out.writeEndObject();
    }

    private static void evidence(JsonGenerator out, DistributionChoice choice) throws IOException {
        out.writeBooleanField("fixedByPlan", choice.fixed());
        if (choice.shapiroWilk().isPresent()) {
            out.writeObjectFieldStart("shapiroWilk");
            Figures.write(out, "w", choice.shapiroWilk().get().w());
            Figures.write(out, "p", choice.shapiroWilk().get().p());
            out.writeEndObject();
        } else {
            out.writeNullField("shapiroWilk");
        }
        out.writeArrayFieldStart("evidence");
        for (DistributionCandidate candidate : choice.evidence()) {
            out.writeStartObject();
            out.writeStringField("distribution", candidate.method().word());
            Figures.write(out, "aicc", candidate.aicc());
            Figures.write(out, "andersonDarling", candidate.andersonDarling());
            Figures.write(out, "p", candidate.p());
            out.writeStringField("pMethod", candidate.pMethod());
            if (!candidate.obstacle().isEmpty()) {
                out.writeStringField("obstacle", candidate.obstacle());
            }
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    /** Parts per million outside the required limits: how many were found, and how many the chosen distribution expects. */
    static void writeNonconforming(JsonGenerator out, Optional<ProcessStudy.Indices> indices) throws IOException {
        if (indices.isEmpty()) {
            out.writeNullField("observedPpm");
            out.writeNullField("expectedPpm");
            return;
        }
        Nonconforming found = indices.get().capability().nonconforming();
        estimate(out, "observedPpm", found.observed());
        estimate(out, "expectedPpm", found.expected());
    }

    /** Pieces that failed what passes or fails, in parts per million. */
    static void writeObserved(JsonGenerator out, ObservedShare share) throws IOException {
        out.writeObjectFieldStart("observedPpm");
        out.writeNumberField("value", share.perMillion());
        out.writeArrayFieldStart("interval");
        end(out, share.lowerPerMillion());
        end(out, share.upperPerMillion());
        out.writeEndArray();
        out.writeStringField("method", ObservedShare.METHOD);
        out.writeEndObject();
        out.writeNullField("expectedPpm");
    }

    /** An estimate with its interval, or why there is none. */
    private static void estimate(JsonGenerator out, String name, Index index) throws IOException {
        out.writeObjectFieldStart(name);
        estimate(out, index);
        out.writeEndObject();
    }

    private static void estimate(JsonGenerator out, Index index) throws IOException {
        Figures.write(out, "value", index.value());
        interval(out, "interval", index);
        if (index.interval().isPresent()) {
            out.writeStringField("method", index.interval().get().method());
        }
        if (!index.reason().isEmpty()) {
            out.writeStringField("reason", index.reason());
        }
    }

    /** The indices of a process that drifts: within the trend, over whole tool lives, at the worst moment. */
    static void writeTrended(JsonGenerator out, Optional<ProcessStudy.Indices> indices) throws IOException {
        Optional<TrendedCapability> trended = indices.flatMap(ProcessStudy.Indices::trended);
        if (trended.isEmpty()) {
            return;
        }
        TrendedCapability found = trended.get();
        out.writeObjectFieldStart("trended");
        Figures.write(out, "standardDeviation", found.withinTrend());
        out.writeNumberField("degreesOfFreedom", found.degreesOfFreedom());
        estimate(out, "cp", found.potential().get(0));
        estimate(out, "cpk", found.potential().get(1));
        estimate(out, "pp", found.wholeLife().get(0));
        estimate(out, "ppk", found.wholeLife().get(1));
        estimate(out, "worst", found.worst());
        estimate(out, "expectedPpm", found.expected());
        out.writeArrayFieldStart("toolLives");
        for (TrendedCapability.Segment life : found.segments()) {
            out.writeStartObject();
            out.writeNumberField("from", life.from() + 1);
            out.writeNumberField("to", life.to());
            if (life.line().isPresent()) {
                Figures.write(out, "start", life.line().get().start());
                Figures.write(out, "end", life.line().get().end());
                Figures.write(out, "slope", life.line().get().slope());
            }
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeArrayFieldStart("notes");
        for (String note : found.notes()) {
            out.writeString(note);
        }
        out.writeEndArray();
        out.writeEndObject();
    }

    /** The reasons of the indices that have no value, by JSON name. */
    static List<Index> missing(Capability capability) {
        return capability.indices().stream()
                .filter(index -> index.value().isEmpty())
                .toList();
    }

    static String jsonName(Index index) {
        return index.name().toLowerCase(Locale.ROOT);
    }

    private static void interval(JsonGenerator out, String name, Index index) throws IOException {
        if (index.interval().isEmpty()) {
            out.writeNullField(name);
            return;
        }
        out.writeArrayFieldStart(name);
        end(out, index.interval().get().lower());
        end(out, index.interval().get().upper());
        out.writeEndArray();
    }

    private static void end(JsonGenerator out, double value) throws IOException {
        if (Double.isFinite(value)) {
            out.writeNumber(value);
        } else {
            out.writeNull();
        }
    }
}
