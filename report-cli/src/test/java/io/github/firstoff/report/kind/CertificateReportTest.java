package io.github.firstoff.report.kind;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.ReportModel;
import io.github.firstoff.sheet.Sheet;
import io.github.firstoff.sheet.SheetKind;
import org.junit.jupiter.api.Test;

/** Held to the contents that ISO/IEC 17050-1:2004, 6.1 lists for a supplier's declaration (from memory of the standard). */
class CertificateReportTest {
    private static final String JOB =
            "\"issuer\": { \"name\": \"Hollin Quay Deck Gear\", \"address\": \"2 Hollin Quay\" },"
                    + " \"customer\": { \"name\": \"Marrow Bay Yachts\" }, \"order\": \"PO 7781\", \"batch\": \"B-1\", \"date\":"
                    + " \"2026-11-20\", \"inspector\": { \"name\": \"A. Quill\", \"position\": \"inspector\" }, \"certificate\": {"
                    + " \"number\": \"C-0419\" }, \"quantity\": ";

    private static MadeUp made(int quantity) {
        return MadeUp.plan()
                .part(", \"drawing\": \"HQ-9-D\"")
                .requires("1", "12.5 ±0.05", ", \"study\": { \"chart\": \"individuals\" }")
                .requires("2", "visual: no burrs")
                .requires("3", "(40)")
                .job(JOB + quantity)
                .readings("part,1,2,3", "A,12.50,pass,40.1", "B,12.52,pass,40.2");
    }

    private static ReportModel model(MadeUp made) {
        return ReportCatalogue.compose(made.sheet(SheetKind.CERTIFICATE));
    }

    @Test
    void declaration_hasEverythingThatADeclarationNeeds() {
        ReportModel model = model(made(2));
        Printed sheet = new Printed(model);
        assertThat(model.number()).isEqualTo("C-0419");
        assertThat(sheet.headline())
                .isEqualTo(
                        "Hollin Quay Deck Gear declares: the 2 pieces of HQ-9, batch B-1, conform to drawing HQ-9-D, revision"
                                + " A.");
        assertThat(sheet.fact("number")).isEqualTo("C-0419");
        assertThat(sheet.fact("issuer")).isEqualTo("Hollin Quay Deck Gear\n2 Hollin Quay");
        assertThat(sheet.fact("date of issue")).isEqualTo("2026-11-20");
        assertThat(sheet.fact("place of issue")).isEqualTo("2 Hollin Quay");
        assertThat(sheet.fact("drawing")).isEqualTo("HQ-9-D, revision A");
        assertThat(sheet.fact("customer")).isEqualTo("Marrow Bay Yachts");
        assertThat(sheet.prose()).contains("decided by simple acceptance").contains("0123456789ab");
        assertThat(model.foot().decisionRule()).startsWith("Simple acceptance");
        Block.SignOff sign = sheet.first(Block.SignOff.class);
        assertThat(Printed.text(sign.statement())).contains("on behalf of Hollin Quay Deck Gear");
        assertThat(sign.lines().get(0).name()).isEqualTo("A. Quill, inspector");
    }

    @Test
    void sampleOfTheDelivery_isNeverDeclaredAsTheWhole() {
        Printed sheet = new Printed(model(made(125)));
        assertThat(sheet.headline()).contains("the 2 pieces inspected, of 125 of HQ-9, batch B-1, conform");
        assertThat(sheet.prose()).contains("2 of 125 pieces were inspected").contains("the other 123");
        assertThat(sheet.fact("delivered")).isEqualTo("125 pieces");
    }

    @Test
    void characteristicMeasuredOnASample_isSaidInTheStatement() {
        Printed sheet = new Printed(model(MadeUp.plan()
                .requires("1", "12.5 ±0.05")
                .requires("2", "8 ±0.1", ", \"inspect\": \"sample\"")
                .job(JOB + 3)
                .readings("part,characteristic,value", "A,1,12.5", "A,2,8.0", "B,1,12.5", "C,1,12.5")));
        assertThat(sheet.headline()).endsWith("revision A, 1 of 2 characteristics by a sample of them.");
        assertThat(sheet.cell("2", "Pieces")).isEqualTo("1");
    }

    @Test
    void table_listsOnlyWhatWasJudged() {
        Printed sheet = new Printed(model(made(2)));
        assertThat(sheet.characteristics().rows()).hasSize(2);
        assertThat(sheet.cell("1", "Pieces")).isEqualTo("2");
        assertThat(sheet.cell("1", "Least")).isEqualTo("12.50");
        assertThat(sheet.cell("2", "Mean")).isEqualTo("all pass");
        // two readings cannot be in control, so no index is given
        assertThat(sheet.heads()).noneMatch(head -> head.startsWith("Cpk"));
    }

    @Test
    void refusedCertificate_isNotComposed() {
        Sheet refused = made(2).readings("C,12.60,pass,40.1").sheet(SheetKind.CERTIFICATE);
        assertThat(refused.refusals()).isNotEmpty();
        assertThatThrownBy(() -> ReportCatalogue.compose(refused))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("refused certificate");
    }

    @Test
    void sheetOfAnotherKind_isRefused() {
        Sheet batch = made(2).sheet(SheetKind.BATCH);
        assertThatThrownBy(() -> new CertificateReport().compose(batch))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("not a batch");
    }
}
