package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.inspection.Reading;
import io.github.firstoff.inspection.Reading.Measured;
import io.github.firstoff.inspection.Reading.Offsets;
import io.github.firstoff.plan.ResolvedPlan;
import io.github.firstoff.quantity.Unit;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Readings that are not one plain number: places along axes, angles in parts, results at settings, lengths at a temperature. */
class PlacesAndSettingsTest {
    private final ResolvedPlan plan =
            PlanFile.read(Path.of("src/test/resources/intake/places.json")).resolve();

    private Intake read(String text) {
        return ReadingFiles.readInputs(plan, List.of(Input.text("r", text)));
    }

    private List<Reading> readings(String text) {
        Intake intake = read(text);
        assertThat(intake.refused().lines()).isEmpty();
        return intake.parts().stream()
                .flatMap(part -> part.readings().values().stream().flatMap(List::stream))
                .toList();
    }

    private Measured only(String text) {
        List<Reading> readings = readings(text);
        assertThat(readings).hasSize(1);
        return (Measured) readings.get(0);
    }

    private static Offsets offsets(String x, String y) {
        return new Offsets(new BigDecimal(x), new BigDecimal(y), Optional.empty());
    }

    @Test
    void whereThePlanSaysTheFeatureShouldBe_aPlaceIsACoordinate() {
        Measured measured = only("part,characteristic,x,y\nS1,1,12.53,-30.04");

        assertThat(measured.offsets()).contains(offsets("0.03", "-0.04"));
        assertThat(measured.value()).isEqualTo(new BigDecimal("0.100"));
        assertThat(measured.unit()).isEqualTo(Unit.MILLIMETRE);
    }

    @Test
    void whereItDoesNot_aPlaceIsADeviation() {
        Measured measured = only("part,characteristic,x,y,value\nS1,2,0.05,0.05,");

        assertThat(measured.offsets()).contains(offsets("0.05", "0.05"));
        // 2·√0.005 = 0.14142…, one place more than the deviations
        assertThat(measured.value()).isEqualTo(new BigDecimal("0.141"));
    }

    @Test
    void aSphericalZone_takesThreeAxes() {
        // 2·√(0.01² + 0.02² + 0.02²) = 0.06
        assertThat(only("part,characteristic,x,y,z\nS1,3,0.01,0.02,-0.02").value())
                .isEqualByComparingTo("0.06");
    }

    @Test
    void aReadyValue_isStillRead() {
        assertThat(only("part,characteristic,value,x,y\nS1,1,0.12,,").offsets()).isEmpty();
    }

    @Test
    void jsonPlaces_areExactWhetherTextOrNumber() {
        assertThat(
                        only("[{\"part\": \"S1\", \"characteristic\": 1, \"x\": 12.530, \"y\": \"-30.04\", \"value\": null}]")
                                .offsets())
                .contains(offsets("0.030", "-0.04"));
        assertThat(only("[{\"part\": \"S1\", \"characteristic\": 2, \"x\": 3e-2, \"y\": 4E-2}]")
                        .value())
                .isEqualByComparingTo("0.1");
    }

    @Test
    void coordinatesInInches_areTakenFromThoseOfThePlanExactly() {
        // 0.5 in = 12.7 mm, -1.2 in = -30.48 mm
        Measured measured = only("part,characteristic,x,y,unit\nS1,1,0.5,-1.2,inch");

        assertThat(measured.unit()).isEqualTo(Unit.MILLIMETRE);
        assertThat(measured.offsets().orElseThrow().x()).isEqualByComparingTo("0.2");
        assertThat(measured.offsets().orElseThrow().y()).isEqualByComparingTo("-0.48");
        assertThat(only("part,characteristic,x,y,unit\nS1,2,0.003,0.004,inch").unit())
                .isEqualTo(Unit.INCH);
    }

    @ParameterizedTest
    @CsvSource(
            quoteCharacter = '`',
            delimiter = '|',
            value = {
                "45°30'|2730|ARC_MINUTE",
                "45° 30′|2730|ARC_MINUTE",
                "45°30.5'|2730.5|ARC_MINUTE",
                "45°30'15\"|163815|ARC_SECOND",
                "45°30'15.25″|163815.25|ARC_SECOND",
                "45°30'15''|163815|ARC_SECOND",
                "-0°07'30\"|-450|ARC_SECOND",
                "−0°07'|-7|ARC_MINUTE",
                "45.5|45.5|DEGREE",
                "-45.50|-45.50|DEGREE"
            })
    void anglesAreExact(String written, BigDecimal value, Unit unit) {
        Measured measured = only("part,characteristic,value\nS1,7," + written);

        assertThat(measured.value()).isEqualTo(value);
        assertThat(measured.unit()).isEqualTo(unit);
    }

    /** A third of a degree is no finite decimal, and 20 minutes are exactly that third. */
    @Test
    void anAngleInMinutes_isHeldExactlyAgainstLimits() {
        assertThat(plan.find("7").orElseThrow().limits().contains(new BigDecimal("2745"), Unit.ARC_MINUTE))
                .isTrue();
        assertThat(plan.find("7").orElseThrow().limits().contains(new BigDecimal("2745.01"), Unit.ARC_MINUTE))
                .isFalse();
    }

    @Test
    void aResultPerSetting_isNoDuplicate_andTakesThePlansSpelling() {
        List<Reading> readings =
                readings("part,characteristic,setting,value\nS1,5,low,ok\nS1,5,Middle,ok\nS1,5,HIGH,nok");

        assertThat(readings)
                .extracting(reading -> reading.context().setting().orElseThrow())
                .containsExactly("low", "middle", "high");
        assertThat(readings)
                .extracting(reading -> ((Reading.Observed) reading).pass())
                .containsExactly(true, true, false);
    }

    @Test
    void bothEndsOfALimitGauge_haveAResultEach() {
        List<Reading> readings = readings("part,characteristic,setting,value\nS1,6,go end,pass\nS1,6,No-Go end,fail");

        assertThat(readings)
                .extracting(reading -> ((Reading.Observed) reading).pass())
                .containsExactly(true, false);
    }

    @Test
    void aTemperature_isKeptAsItIsWritten() {
        assertThat(only("part,characteristic,value,temperature\nS1,4,100.01,23.50")
                        .context()
                        .temperature())
                .contains(new BigDecimal("23.50"));
        assertThat(only("[{\"part\": \"S1\", \"characteristic\": \"4\", \"value\": 100.01, \"temperature\": -5}]")
                        .context()
                        .temperature())
                .contains(new BigDecimal("-5"));
        assertThat(only("{\"temperature\": 24, \"readings\": [{\"part\": \"S1\", \"4\": 100.01}]}")
                        .context()
                        .temperature())
                .contains(new BigDecimal("24"));
    }

    @Test
    void aTemperatureThatChangesNothing_isMentionedOnce() {
        ResolvedPlan other =
                PlanFile.read(Path.of("src/test/resources/intake/plan.json")).resolve();

        Intake intake = ReadingFiles.readInputs(
                other,
                List.of(Input.text(
                        "r.csv", "part,characteristic,value,temperature\nS1,2,12.5,20.0\nS2,2,12.5,24\nS3,2,12.5,25")));

        assertThat(intake.refused().lines()).isEmpty();
        assertThat(intake.notices())
                .extracting(Notice::line)
                .containsExactly(
                        "r.csv:3, column temperature: the plan has no \"temperature\", so this reading and others away from"
                                + " 20 °C are not corrected");
    }

    @ParameterizedTest
    @CsvSource({"16,µin,0.4064", "16,uin,0.4064", "0.4,µm,0.4", "0.4,um,0.4", "0.0004,mm,0.4"})
    void roughness_convertsExactly(String value, String unit, String micrometres) {
        Measured measured = only("part,characteristic,value,unit\nS1,8," + value + "," + unit);

        assertThat(Unit.compare(measured.value(), measured.unit(), new BigDecimal(micrometres), Unit.MICROMETRE))
                .isZero();
    }
}
