package io.github.firstoff.sheet;

import com.fasterxml.jackson.core.JsonGenerator;
import io.github.firstoff.study.capability.DataChecks;
import java.io.IOException;

/** What is to be known of the readings themselves, in the JSON result. Reported; nothing was removed. */
final class DataChecksJson {
    private DataChecksJson() {}

    static void write(JsonGenerator out, ProcessStudy study) throws IOException {
        if (study.indices().isEmpty()) {
            out.writeNullField("dataChecks");
            return;
        }
        DataChecks checks = study.capability().checks();
        out.writeObjectFieldStart("dataChecks");
        out.writeArrayFieldStart("remarks");
        for (String remark : checks.remarks()) {
            out.writeString(remark);
        }
        out.writeEndArray();
        if (checks.discreteness().isPresent()) {
            DataChecks.Discreteness found = checks.discreteness().get();
            out.writeObjectFieldStart("discreteness");
            out.writeStringField("step", found.step().stripTrailingZeros().toPlainString());
            Figures.write(out, "stepOverSigma", found.stepOverSigma());
            Figures.write(out, "stepOverTolerance", found.stepOverTolerance());
            out.writeNumberField("distinctValues", found.distinctValues());
            out.writeNumberField("distinctRanges", found.distinctRanges());
            out.writeNumberField("possibleRanges", found.possibleRanges());
            out.writeBooleanField("coarse", found.isCoarse());
            out.writeEndObject();
        }
        if (checks.ties().isPresent()) {
            out.writeObjectFieldStart("ties");
            out.writeNumberField("tied", checks.ties().get().tied());
            out.writeNumberField("most", checks.ties().get().most());
            out.writeEndObject();
        }
        if (checks.autocorrelation().isPresent()) {
            out.writeObjectFieldStart("autocorrelation");
            Figures.write(out, "lagOne", checks.autocorrelation().get().lagOne());
            Figures.write(out, "limit", checks.autocorrelation().get().limit());
            out.writeEndObject();
        }
        if (checks.outliers().isPresent()) {
            outliers(out, checks.outliers().get());
        }
        if (checks.trend().isPresent()) {
            out.writeObjectFieldStart("trend");
            Figures.write(out, "slope", checks.trend().get().slope());
            Figures.write(out, "slopeError", checks.trend().get().slopeError());
            Figures.write(out, "p", checks.trend().get().p());
            out.writeEndObject();
        }
        out.writeEndObject();
    }

    /** By the number of the reading: on a chart of a family the pieces are those of all its members. */
    private static void outliers(JsonGenerator out, DataChecks.Outliers found) throws IOException {
        out.writeArrayFieldStart("outliers");
        for (int i = 0; i < found.values().size(); i++) {
            out.writeStartObject();
            out.writeNumberField("reading", found.readings().get(i) + 1);
            out.writeStringField("value", found.values().get(i).toPlainString());
            out.writeEndObject();
        }
        out.writeEndArray();
    }
}
