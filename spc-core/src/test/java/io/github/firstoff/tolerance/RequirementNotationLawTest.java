package io.github.firstoff.tolerance;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.firstoff.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

/** Laws of the notation, over requirements made at random from fixed seeds. */
class RequirementNotationLawTest {
    private static final long SEED = 1101;
    private static final int TRIES = 20_000;

    private final Random random = new Random(SEED);

    /** What is printed is read back to an equal requirement, and printing it again changes nothing. */
    @Test
    void parse_printedText_isTheSameRequirement() {
        for (int i = 0; i < TRIES; i++) {
            String written = requirement();
            Requirement read = parsed(written);
            String text = read.text();

            assertThat(parsed(text))
                    .as("seed %s: %s printed %s", SEED, written, text)
                    .isEqualTo(read);
            assertThat(parsed(text).text()).isEqualTo(text);
            assertThat(parsed(text).hashCode()).isEqualTo(read.hashCode());
            assertThat(read.notation().elements()).isNotEmpty();
        }
    }

    /** What resolves has its limits in order, in a unit that readings of the requirement can be compared with. */
    @Test
    void resolve_anyRequirement_hasLimitsInOrderOrSaysWhyNot() {
        Drawing drawing = PlainDrawing.in(Unit.MILLIMETRE)
                .with(GeneralTolerance.parse("ISO 2768-mK"))
                .withShorterLeg("30");
        int resolved = 0;
        for (int i = 0; i < TRIES; i++) {
            Requirement read = parsed(requirement());
            try {
                ToleranceZone zone = read.resolve(drawing);
                assertThat(zone.stated().unit().isComparableWith(read.readingUnit(Unit.MILLIMETRE)))
                        .as(read.text())
                        .isTrue();
                assertThat(zone.stated().isOpen()).isEqualTo(read.nature() != Requirement.Nature.MEASURED);
                resolved++;
            } catch (RequirementFault undefined) {
                assertThat(undefined.getMessage()).isNotBlank();
            }
        }
        assertThat(resolved).as("seed %s", SEED).isGreaterThan(TRIES / 2);
    }

    /** Whatever is typed, the answer is a requirement or a fault whose place lies in the text: never another exception. */
    @Test
    void parse_anyText_isReadOrRefusedInItsPlace() {
        String alphabet = " 0123456789.,+-±/xX×°'\"ØøRCSH7pgm()[]|ⓂⓁABC-±…µinmaxflatness:\u00a0−⌖";
        int refused = 0;
        for (int i = 0; i < TRIES * 2; i++) {
            StringBuilder text = new StringBuilder(requirement());
            for (int slips = 1 + random.nextInt(4); slips > 0; slips--) {
                int at = random.nextInt(text.length() + 1);
                char typed = alphabet.charAt(random.nextInt(alphabet.length()));
                switch (random.nextInt(3)) {
                    case 0 -> text.insert(at, typed);
                    case 1 -> text.replace(Math.min(at, text.length()), Math.min(at + 1, text.length()), "" + typed);
                    default -> text.delete(Math.min(at, text.length()), Math.min(at + 2, text.length()));
                }
            }
            try {
                Requirement read = RequirementNotation.parse(text.toString());
                assertThat(RequirementNotation.parse(read.text()))
                        .as("%s", text)
                        .isEqualTo(read);
            } catch (RequirementFault fault) {
                refused++;
                assertThat(fault.getMessage()).as("%s", text).isNotBlank();
                assertThat(fault.position().orElseThrow()).as("%s", text).isBetween(0, text.length());
                assertThat(fault.text()).isEqualTo(text.toString());
            }
        }
        assertThat(refused).as("seed %s", SEED).isGreaterThan(TRIES / 2);
    }

    private static Requirement parsed(String written) {
        try {
            return RequirementNotation.parse(written);
        } catch (RequirementFault fault) {
            throw new AssertionError(written + ": " + fault.getMessage(), fault);
        }
    }

    private String requirement() {
        List<Supplier<String>> kinds = List.of(
                () -> size() + " ±" + small(),
                () -> size() + " +/- " + small(),
                () -> size() + " +" + small() + "/-" + small(),
                () -> size() + " -" + small() + "/ +" + small(),
                () -> size() + " 0/-" + small(),
                () -> size() + " +" + small() + "/0",
                () -> size() + " ±" + small() + one("", " mm", " in"),
                () -> one("", "Ø", "4x ") + number(6, 400) + " ±" + small() + one(" (E)", "Ⓔ"),
                this::limits,
                () -> size() + one(" min", " max"),
                () -> one("", "Ø", "⌀") + number(1, 3150) + " "
                        + one("h", "H", "js", "JS", "g", "P", "k", "K", "u", "ZC") + (1 + random.nextInt(18)),
                () -> one("", "Ø") + number(1, 500) + " H" + (5 + random.nextInt(6)) + "/" + one("f", "p", "s") + "6",
                () -> size(),
                () -> number(1, 20) + "x45°",
                () -> (2 + random.nextInt(8)) + "x " + number(1, 20) + "x30°",
                this::angle,
                () -> angle() + one(" ±30'", " ±0.5°", " ±0°20'", " +1°/0", " +10'/-5'", " ±15\""),
                () -> angle() + " (leg " + number(1, 400) + ")",
                () -> "[" + size() + "]",
                () -> "(" + size() + ")",
                () -> one("Ra", "Rz", "Rt", "Rq", "Rmax") + " " + number(1, 12) + one("", " max", " min", " µm max"),
                this::geometric,
                () -> one("visual: ", "function: ") + one("no burrs", "turns freely", "edges broken 0.2 max"),
                () -> "M" + (2 + random.nextInt(30)) + "x0.8-6H go/no-go",
                () -> one("flatness", "straightness", "symmetry") + " general (length " + number(1, 400) + ")");
        return kinds.get(random.nextInt(kinds.size())).get();
    }

    private String limits() {
        int lower = 1 + random.nextInt(400);
        return one("", "Ø", "R", "4x Ø") + lower + ".05" + one("..", " .. ", " to ") + (lower + 1 + random.nextInt(3))
                + ".1";
    }

    private String size() {
        return one("", "", "4x ", "12× ") + one("", "Ø", "R", "SR", "SØ", "C", "□") + number(6, 400);
    }

    private String angle() {
        return (1 + random.nextInt(179)) + one("°", ".5°", "°30'", "°15'20\"", "°7.5'");
    }

    private String number(int from, int to) {
        String whole = Integer.toString(from + random.nextInt(to - from));
        return whole + one("", "", ".0", ".25", ".500", "." + (1 + random.nextInt(999)));
    }

    private String small() {
        return "0." + one("", "0", "00") + (1 + random.nextInt(99));
    }

    private String geometric() {
        List<GeometricCharacteristic> all = List.of(GeometricCharacteristic.values());
        GeometricCharacteristic each = all.get(random.nextInt(all.size()));
        String name = one(each.word(), each.symbol());
        String datums = one(" A", " A B", " A B C", " A-B", " A B (M)", "|A|B Ⓛ|C");
        String material = one("", " (M)", "Ⓜ", " (L)");
        return switch (each) {
            case STRAIGHTNESS -> name + one(" Ø", " ") + small() + material;
            case FLATNESS -> name + " " + small() + material;
            case ROUNDNESS, CYLINDRICITY -> name + " " + small() + one("", " (F)", "/100", "/100 (F)");
            case LINE_PROFILE, SURFACE_PROFILE ->
                name + " " + small() + one("", " UZ-0.05", " UZ+0.01", " (U) 0", " CZ") + one("", datums);
            case RUN_OUT, TOTAL_RUN_OUT -> name + " " + small() + datums;
            case SYMMETRY -> name + " " + small() + material + datums;
            case POSITION -> name + one(" Ø", " SØ", " ") + small() + material + one("", datums);
            default -> name + one(" Ø", " ") + small() + material + datums;
        };
    }

    private String one(String... choices) {
        return choices[random.nextInt(choices.length)];
    }

    /** The generator makes every kind that the notation knows. */
    @Test
    void generator_reachesEveryKind() {
        List<String> kinds = new ArrayList<>();
        for (int i = 0; i < 2_000; i++) {
            String kind = parsed(requirement()).getClass().getSimpleName();
            if (!kinds.contains(kind)) {
                kinds.add(kind);
            }
        }
        assertThat(kinds)
                .contains(
                        "DeviatedSize",
                        "LimitedSize",
                        "OneLimitSize",
                        "ClassedSize",
                        "FitPair",
                        "BareSize",
                        "UnjudgedSize",
                        "Roughness",
                        "GeometricTolerance",
                        "AttributeCheck",
                        "GeneralGeometric",
                        "EnvelopedSize");
        assertThat(Optional.of(kinds.size())).contains(12);
    }
}
