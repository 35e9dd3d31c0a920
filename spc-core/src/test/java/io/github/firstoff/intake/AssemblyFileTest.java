package io.github.firstoff.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.github.firstoff.assembly.Criterion;
import io.github.firstoff.assembly.Joint;
import io.github.firstoff.assembly.Piece;
import io.github.firstoff.assembly.Smoothing;
import io.github.firstoff.plan.Hand;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Assemblies as they are read, and every way in which one can be wrong, with the place and what would be right. */
class AssemblyFileTest {
    private static final String SOUND = """
            {
              "schema": "firstoff-assembly-1",
              "joint": { "nominal": "40", "length": "12", "friction": 0.12 },
              "outer": { "material": "EN AW-6061 T6", "outsideDiameter": "60", "requirement": "40 P7", "roughnessRz": 2 },
              "inner": { "material": "100Cr6", "insideDiameter": "30", "requirement": "40 0/-0.011", "roughnessRz": 1 },
              "temperature": { "assembly": 20, "minimum": -10, "maximum": 60 }
            }
            """;

    @TempDir
    private Path folder;

    private static AssemblyFile read(String text) {
        return AssemblyFile.read(Input.text("a.json", text));
    }

    @Test
    void aSoundAssembly_isReadWithItsDefaults() {
        AssemblyFile file = read(SOUND);
        Joint joint = file.joint();

        assertThat(file.notices()).isEmpty();
        assertThat(joint.criterion()).isEqualTo(Criterion.VON_MISES);
        assertThat(joint.smoothing()).isEqualTo(Smoothing.DIN_7190_1_2017);
        assertThat(joint.smoothingLoss()).isEqualByComparingTo("0.0012");
        assertThat(joint.gap()).isEqualByComparingTo("0.04");
        assertThat(joint.outer().limits().orElseThrow().lower().orElseThrow()).isEqualByComparingTo("39.958");
        assertThat(joint.inner().limits().orElseThrow().upper().orElseThrow()).isEqualByComparingTo("40");
        assertThat(joint.outer().material().yield()).isEqualByComparingTo("240");
        assertThat(joint.temperature().maximum()).isEqualByComparingTo("60");
    }

    @Test
    void aBearing_bringsItsRingAndItsClearance() {
        String bearing = SOUND.replace("\"40\"", "\"52\"")
                .replace("40 P7", "Ø52 P7")
                .replace(
                        "\"requirement\": \"40 0/-0.011\"",
                        "\"bearing\": { \"class\": \"P6\", \"clearanceGroup\": \"C3\", \"bore\": 25 }");
        Joint joint = read(bearing).joint();

        assertThat(joint.inner().limits().orElseThrow().lower().orElseThrow()).isEqualByComparingTo("51.989");
        assertThat(joint.bearing()
                        .orElseThrow()
                        .clearance()
                        .orElseThrow()
                        .upper()
                        .orElseThrow())
                .isEqualByComparingTo("28");
        // without its bore nothing is known of the clearance, and it is said
        AssemblyFile without = read(bearing.replace(", \"bore\": 25", ""));
        assertThat(without.joint().bearing().orElseThrow().clearance()).isEmpty();
        assertThat(without.notices())
                .anySatisfy(notice -> assertThat(notice.line()).contains("bore"));
    }

    /** Each fault: what is put in place of what, and what the message must hold. The line and column stand first. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '\0', textBlock = """
            "60"                     | "40"                     | a.json:4:62, outer, outsideDiameter: the diameters are the wrong way round | more than the joint diameter, 40
            "60"                     | "38"                     | wrong way round                        | found 38
            "insideDiameter": "30"   | "insideDiameter": "40"   | a.json:5:54, inner, insideDiameter: the diameters are the wrong way round | less than the joint diameter, 40
            "40 0/-0.011"            | "45 0/-0.011"            | a.json:5:75, inner, requirement: the inner part is thicker | within 2 % of the joint diameter
            "40 0/-0.011"            | "40.79 ±0.005"           | the inner part is thicker than its bore can take | in a bore from 39.958 mm
            "40 P7"                  | "44 P7"                  | this is no size at a joint of 40 mm    | within 2 %
            "material": "100Cr6", | | "material" is missing | a name from the table
            "EN AW-6061 T6" | "unobtainium" | the table has no such material | or an object with its values
            "EN AW-6061 T6" | "EN AW-6061 T5" | perhaps EN AW-6061 T6 is meant | one of
            "100Cr6" | { "name": "steel", "youngsModulus": 208, "poissonsRatio": 0.3, "expansion": 12e-6, "yield": 900 } | youngsModulus: it is stated in MPa | found 208
            "100Cr6" | { "name": "steel", "youngsModulus": 208000, "poissonsRatio": 0.5, "expansion": 12e-6, "yield": 900 } | poissonsRatio | below 0.5
            "100Cr6" | { "name": "steel", "youngsModulus": 208000, "poissonsRatio": 0.3, "expansion": 12, "yield": 900 } | a power of ten is perhaps missing | 0.0000236
            "100Cr6" | { "name": "steel", "youngsModulus": 208000, "poissonsRatio": 0.3, "expansion": 12e-6 } | "yield" is missing | MPa
            "minimum": -10           | "minimum": -300          | a.json:6:47, temperature, minimum: this lies below absolute zero | found -300
            "minimum": -10           | "minimum": 70            | the coldest temperature lies above the hottest | at most 60
            "length": "12"           | "length": "-12"          | a.json:3:41, joint, length: found -12  | greater than 0
            "nominal": "40"          | "nominal": 0             | joint, nominal: found 0                | greater than 0
            "length": "12",          |                          | "length" is missing                    | greater than 0
            0.12                     | 1.7                      | no metals rub like that                | up to 1.5
            0.12                     | { "minimum": 0.2, "maximum": 0.1 } | the lower bound of friction is above | at most 0.1
            "roughnessRz": 2         | "roughnessRz": -2        | roughnessRz: found -2                  | not negative
            "40 P7"                  | "40 max"                 | the size has only one limit            | two limits
            "40 P7"                  | "flatness 0.02"          | this is no size with limits            | 52 P7
            "40 P7"                  | "40 Q7"                  | requirement                            | found "40 Q7"
            firstoff-assembly-1      | firstoff-plan-1          | found a plan, as its "schema" says; expected an assembly | fit.md
            "joint"                  | "jiont"                  | the key "jiont"                        | "joint"
            """)
    void whatIsWrong_isNamedWithItsPlace(String sound, String wrong, String message, String expected) {
        assertThat(SOUND).contains(sound);
        String text = SOUND.replace(sound, wrong == null ? "" : wrong);

        InputRefused refused = catchThrowableOfType(InputRefused.class, () -> read(text));

        assertThat(refused).as(text).isNotNull();
        assertThat(String.join("\n", refused.lines())).contains(message, expected);
    }

    @Test
    void mixedHandsInTheFile_areRefused() {
        String mixed = SOUND.replace("\"outer\": {", "\"outer\": { \"hand\": \"port\",")
                .replace("\"inner\": {", "\"inner\": { \"hand\": \"starboard\",");
        String other = SOUND.replace("\"joint\"", "\"hand\": \"port\", \"joint\"")
                .replace("\"outer\": {", "\"outer\": { \"hand\": \"right\",");

        assertThat(catchThrowableOfType(InputRefused.class, () -> read(mixed))
                        .lines()
                        .get(0))
                .contains("a.json:5", "the hands are mixed: the outer part is port", "\"starboard\"");
        assertThat(catchThrowableOfType(InputRefused.class, () -> read(other))
                        .lines()
                        .get(0))
                .contains("a.json:4", "the hands are mixed: the assembly is for port", "\"right\"");
    }

    private Path file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private static AssemblyFile.Measured with(String assembly, Path bores, Path rings) {
        return read(assembly).with(Optional.ofNullable(bores), Optional.ofNullable(rings));
    }

    private static String refusal(String assembly, Path bores, Path rings) {
        InputRefused refused = catchThrowableOfType(InputRefused.class, () -> with(assembly, bores, rings));
        assertThat(refused).isNotNull();
        return String.join("\n", refused.lines());
    }

    @Test
    void sizes_areTakenFromAnyFileOfReadings() throws IOException {
        Path bores = file("b.csv", "part,characteristic,value\nB1,1,39.961\nB1,2,pass\nB2,2,fail\nB2,1,39.97\n");
        Path wide = file("r.csv", "part,hand,7,8\nR1,port,39.995,12.5\nR2,port,39.99,abc\n");
        String assembly = SOUND.replace("\"outer\": {", "\"outer\": { \"characteristic\": 1,")
                .replace("\"inner\": {", "\"inner\": { \"characteristic\": \"7\",");

        AssemblyFile.Measured measured = with(assembly, bores, wide);

        assertThat(measured.bores().orElseThrow())
                .containsExactly(new Piece("B1", new BigDecimal("39.961")), new Piece("B2", new BigDecimal("39.97")));
        assertThat(measured.rings().orElseThrow()).extracting(Piece::name).containsExactly("R1", "R2");
        assertThat(measured.hand()).contains(Hand.PORT);
    }

    @Test
    void aFileOfOneCharacteristic_needsNoName_butOneOfSeveralDoes() throws IOException {
        Path one = file("one.csv", "part,characteristic,value\nB1,bore,39.961\nB2,bore,39.97\n");
        Path two = file("two.csv", "part,characteristic,value\nB1,1,39.961\nB1,2,39.97\n");

        assertThat(with(SOUND, one, null).bores().orElseThrow()).hasSize(2);
        assertThat(refusal(SOUND, two, null))
                .contains("two.csv", "several characteristics", "\"1\" and \"2\"", "\"characteristic\" in \"outer\"");
        assertThat(refusal(SOUND.replace("\"outer\": {", "\"outer\": { \"characteristic\": \"3\","), two, null))
                .contains("two.csv", "readings of \"1\" and \"2\"", "expected \"3\"");
    }

    @Test
    void readingsInInches_areMillimetresHere() throws IOException {
        Path bores = file("b.csv", "part,characteristic,value,unit\nB1,1,1.5745,inch\nB2,1,1.5746,inch\n");

        assertThat(with(SOUND, bores, null).bores().orElseThrow())
                .extracting(piece -> piece.size().stripTrailingZeros().toPlainString())
                .containsExactly("39.9923", "39.99484");
    }

    @Test
    void aSampleOfOne_isRefusedWithItsLine() throws IOException {
        Path one = file("b.csv", "part,characteristic,value\nB1,1,39.961\n");

        assertThat(refusal(SOUND, one, null)).contains("b.csv:2", "a sample of 1", "at least two pieces");
    }

    @Test
    void mixedHandsInReadings_areRefused() throws IOException {
        Path port = file("p.csv", "part,hand,characteristic,value\nB1,port,1,39.961\nB2,port,1,39.97\n");
        Path starboard = file("s.csv", "part,hand,characteristic,value\nR1,starboard,1,39.99\nR2,starboard,1,39.98\n");
        Path both = file("m.csv", "part,hand,characteristic,value\nB1,port,1,39.961\nB2,starboard,1,39.97\n");

        assertThat(refusal(SOUND, port, starboard))
                .contains("s.csv", "the hands are mixed", "port parts in both files");
        assertThat(refusal(SOUND, both, null)).contains("m.csv:3", "the readings mix both hands");
        assertThat(refusal(SOUND.replace("\"joint\"", "\"hand\": \"starboard\", \"joint\""), port, null))
                .contains("p.csv:2", "other hand", "starboard");
        assertThat(with(SOUND.replace("\"joint\"", "\"hand\": \"port\", \"joint\""), port, null)
                        .hand())
                .contains(Hand.PORT);
    }

    @Test
    void aSizeFarFromTheJoint_isRefused() throws IOException {
        Path far = file("b.csv", "part,characteristic,value\nB1,1,39.961\nB2,1,93.97\n");

        assertThat(refusal(SOUND, far, null)).contains("b.csv", "part B2", "93.97 mm", "within 2 %");
    }

    @Test
    void aPartWithoutASize_isRefusedAtItsPlace() {
        assertThat(refusal(SOUND.replace("\"requirement\": \"40 P7\", ", ""), null, null))
                .contains("a.json:4", "the size of the outer part is not known", "--bores");
    }

    @Test
    void pairs_mustBeThere() throws IOException {
        Path bores = file("b.csv", "part,characteristic,value\n1,1,39.961\n2,1,39.97\n");
        Path rings = file("r.csv", "part,characteristic,value\n1,1,39.99\n3,1,39.98\n");
        String byPart = SOUND.replace("\"joint\"", "\"pairs\": \"by-part\", \"joint\"");
        String listed = SOUND.replace(
                "\"joint\"", "\"pairs\": [{ \"outer\": 1, \"inner\": 3 }, { \"outer\": 2, \"inner\": 9 }], \"joint\"");
        String twice = SOUND.replace(
                "\"joint\"", "\"pairs\": [{ \"outer\": 1, \"inner\": 3 }, { \"outer\": 1, \"inner\": 1 }], \"joint\"");

        assertThat(refusal(byPart, bores, null)).contains("not both parts were measured");
        assertThat(refusal(byPart, bores, rings)).contains("\"2\", \"3\"", "the same names in both files");
        assertThat(refusal(listed, bores, rings)).contains("\"9\"", "a name from the readings");
        assertThat(catchThrowableOfType(InputRefused.class, () -> read(twice))
                        .lines()
                        .get(0))
                .contains("a piece is in two pairs");
        assertThat(with(listed.replace("9", "1"), bores, rings).joint().pairs().listed())
                .isEqualTo(List.of(new Joint.Couple("1", "3"), new Joint.Couple("2", "1")));
    }

    @Test
    void aFileOfAnotherKind_isNamed() {
        assertThat(catchThrowableOfType(InputRefused.class, () -> read("[]"))
                        .lines()
                        .get(0))
                .contains("a.json:1:1", "a list", "an assembly");
        assertThat(catchThrowableOfType(InputRefused.class, () -> read("{")).lines())
                .isNotEmpty();
    }
}
