package io.github.firstoff.tolerance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.github.firstoff.quantity.Unit;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The user's guide to requirements says what the program does: every row of its tables of examples is run. */
class RequirementsGuideTest {
    private static final Path GUIDE = Path.of("..", "docs", "requirements.md");
    private static final Pattern PICTURE = Pattern.compile("\\]\\((pictures/[^)]+)\\)");

    private static final Drawing DRAWING = PlainDrawing.in(Unit.MILLIMETRE)
            .with(GeneralTolerance.parse("ISO 2768-mK"))
            .with(new Drawing.SizeFeature(
                    "4",
                    Limits.between(new BigDecimal("10"), new BigDecimal("10.2"), Unit.MILLIMETRE),
                    Drawing.Form.HOLE));

    record Example(String written, String second, String third) {
        @Override
        public String toString() {
            return written;
        }
    }

    static List<Example> understood() throws IOException {
        return rowsUnder("| written | comes to | means |");
    }

    static List<Example> refused() throws IOException {
        return rowsUnder("| written | answer | would be understood |");
    }

    private static List<Example> rowsUnder(String heading) throws IOException {
        List<Example> rows = new ArrayList<>();
        boolean inside = false;
        for (String line : Files.readAllLines(GUIDE)) {
            if (line.equals(heading)) {
                inside = true;
            } else if (!line.startsWith("|")) {
                inside = false;
            } else if (inside && !line.startsWith("| ---")) {
                String[] cells = line.split("\\|", -1);
                assertThat(cells).as(line).hasSize(5);
                rows.add(new Example(unquoted(cells[1]), cells[2].strip(), unquoted(cells[3])));
            }
        }
        return rows;
    }

    private static String unquoted(String cell) {
        String stripped = cell.strip();
        return stripped.startsWith("`") && stripped.endsWith("`")
                ? stripped.substring(1, stripped.length() - 1)
                : stripped;
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("understood")
    void guide_example_comesToWhatItSays(Example example) {
        Requirement requirement = RequirementNotation.parse(example.written());

        assertThat(inWords(requirement)).isEqualTo(example.second());
    }

    private static String inWords(Requirement requirement) {
        if (requirement.nature() == Requirement.Nature.ATTRIBUTE) {
            return "pass or fail";
        }
        if (requirement.nature() != Requirement.Nature.MEASURED) {
            return "not judged";
        }
        boolean fit = requirement instanceof FitPair;
        Drawing drawing = fit ? PlainDrawing.in(Unit.MILLIMETRE).with(Drawing.Form.HOLE) : DRAWING;
        Limits limits = requirement.resolve(drawing).stated();
        Optional<String> lower = limits.lower().map(BigDecimal::toPlainString);
        Optional<String> upper = limits.upper().map(BigDecimal::toPlainString);
        String range = lower.isPresent() && upper.isPresent()
                ? lower.get() + " to " + upper.get()
                : lower.map(least -> "at least " + least).orElseGet(() -> "at most " + upper.orElseThrow());
        return range + " " + limits.unit().symbol();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("refused")
    void guide_refusal_answersAsItSays(Example example) {
        RequirementFault fault = catchThrowableOfType(
                RequirementFault.class,
                () -> RequirementNotation.parse(example.written()).resolve(DRAWING));

        assertThat(fault).as("refusal of %s", example.written()).hasMessage(example.second());
        assertThat(fault.expected()).isEqualTo(example.third());
    }

    @Test
    void guide_tables_areFound() throws IOException {
        assertThat(understood()).hasSizeGreaterThan(60);
        assertThat(refused()).hasSizeGreaterThan(20);
    }

    @Test
    void guide_pictures_exist() throws IOException {
        Matcher pictures = PICTURE.matcher(Files.readString(GUIDE));
        int found = 0;
        while (pictures.find()) {
            assertThat(GUIDE.resolveSibling(pictures.group(1))).isRegularFile();
            found++;
        }
        assertThat(found).isGreaterThan(5);
    }
}
