package io.github.firstoff.keyed;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.tolerance.GeometricCharacteristic;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Stand-ins of signs on a terminal that has ASCII only; common practice of typescript. */
class AsciiTextTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Ø12 H7 | dia 12 H7",
                "31.5 ±0.05 | 31.5 +/-0.05",
                "45° ±30′ | 45 deg +/-30'",
                "at 20 °C | at 20 degC",
                "(11.5 ± 0.5)·10⁻⁶ | (11.5 +/- 0.5).10^-6",
                "m² and 10¹² | m^2 and 10^12",
                "⌖ Ø0.2 Ⓜ A | position dia 0.2 (M) A",
                "Müller, Ångström, Łódź, Straße | Muller, Angstrom, ?odz, Strasse",
                "1½ in | 1 1/2 in",
                "点 | ?"
            })
    void aSign_hasAStandInThatSaysTheSame(String text, String ascii) {
        assertThat(AsciiText.of(text)).isEqualTo(ascii);
    }

    @ParameterizedTest
    @EnumSource
    void everyGeometricCharacteristic_isNamed(GeometricCharacteristic characteristic) {
        assertThat(AsciiText.of(characteristic.symbol())).isEqualTo(characteristic.word() + ' ');
    }

    /** Whatever sign the dialogue or a verdict says by itself, none becomes a question mark. */
    @Test
    void noSignOfTheDialogue_isWithoutStandIn() throws IOException {
        List<Path> sources;
        try (Stream<Path> keyed = Files.list(Path.of("src", "main", "java", "io", "github", "firstoff", "keyed"))) {
            sources = Stream.concat(
                            keyed,
                            Stream.of(
                                    Path.of("src/main/java/io/github/firstoff/sheet/Phrases.java"),
                                    Path.of(
                                            "../spc-core/src/main/java/io/github/firstoff/conformance/Plausibility.java"),
                                    Path.of("../spc-core/src/main/java/io/github/firstoff/quantity/Unit.java")))
                    .toList();
        }
        assertThat(sources).hasSizeGreaterThan(10);
        for (Path source : sources) {
            Files.readString(source)
                    .codePoints()
                    .filter(c -> c > 0x7E)
                    .distinct()
                    .forEach(c -> assertThat(AsciiText.of(Character.toString(c)))
                            .as("%s of %s", Character.toString(c), source)
                            .matches("[ -~]+")
                            .isNotEqualTo("?"));
        }
    }
}
