package io.github.firstoff;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noCodeUnits;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noFields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noMethods;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Set;

/** The shape of the library: who may know whom, where exact decimals end, and what the core never touches. */
@AnalyzeClasses(packages = "io.github.firstoff", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
    private static final String ROOT = "io.github.firstoff.";
    private static final String[] EXACT_WORLD = {
        ROOT + "quantity..",
        ROOT + "tolerance..",
        ROOT + "plan..",
        ROOT + "inspection..",
        ROOT + "conformance..",
        ROOT + "assembly..",
        ROOT + "intake.."
    };
    private static final Set<String> FLOATING =
            Set.of("double", "float", "java.lang.Double", "java.lang.Float", "[D", "[F", "java.util.OptionalDouble");

    @ArchTest
    static final ArchRule EACH_PACKAGE_KNOWS_ONLY_THOSE_ABOVE_IT = layeredArchitecture()
            .consideringOnlyDependenciesInLayers()
            .layer("quantity")
            .definedBy(ROOT + "quantity..")
            .layer("tolerance")
            .definedBy(ROOT + "tolerance..")
            .layer("plan")
            .definedBy(ROOT + "plan..")
            .layer("inspection")
            .definedBy(ROOT + "inspection..")
            .layer("conformance")
            .definedBy(ROOT + "conformance..")
            .layer("assembly")
            .definedBy(ROOT + "assembly..")
            .layer("sample")
            .definedBy(ROOT + "sample..")
            .layer("stats")
            .definedBy(ROOT + "stats..")
            .layer("study")
            .definedBy(ROOT + "study..")
            .layer("intake")
            .definedBy(ROOT + "intake..")
            .whereLayer("quantity")
            .mayNotAccessAnyLayer()
            .whereLayer("stats")
            .mayNotAccessAnyLayer()
            .whereLayer("tolerance")
            .mayOnlyAccessLayers("quantity")
            .whereLayer("plan")
            .mayOnlyAccessLayers("tolerance", "quantity")
            .whereLayer("inspection")
            .mayOnlyAccessLayers("plan", "tolerance", "quantity")
            .whereLayer("conformance")
            .mayOnlyAccessLayers("inspection", "plan", "tolerance", "quantity")
            .whereLayer("assembly")
            .mayOnlyAccessLayers("plan", "tolerance", "quantity")
            .whereLayer("sample")
            .mayOnlyAccessLayers("inspection", "plan", "tolerance", "quantity")
            .whereLayer("intake")
            .mayOnlyAccessLayers("assembly", "inspection", "plan", "tolerance", "quantity")
            .whereLayer("study")
            .mayOnlyAccessLayers(
                    "assembly", "conformance", "inspection", "plan", "tolerance", "quantity", "sample", "stats");

    /** Every package may say something in words, so words know nobody. */
    @ArchTest
    static final ArchRule REMARKS_KNOW_NOBODY = noClasses()
            .that()
            .resideInAPackage(ROOT + "remark..")
            .should()
            .dependOnClassesThat(JavaClass.Predicates.resideInAPackage("io.github.firstoff..")
                    .and(DescribedPredicate.not(JavaClass.Predicates.resideInAPackage(ROOT + "remark.."))));

    /** A package that no layer names would escape the rule above. */
    @ArchTest
    static final ArchRule EVERY_CLASS_IS_IN_A_LAYER = classes()
            .should()
            .resideInAnyPackage(
                    ROOT + "remark..",
                    ROOT + "quantity..",
                    ROOT + "tolerance..",
                    ROOT + "plan..",
                    ROOT + "inspection..",
                    ROOT + "conformance..",
                    ROOT + "assembly..",
                    ROOT + "sample..",
                    ROOT + "stats..",
                    ROOT + "study.*..",
                    ROOT + "intake..");

    @ArchTest
    static final ArchRule STUDIES_DO_NOT_KNOW_EACH_OTHER =
            slices().matching(ROOT + "study.(*)..").should().notDependOnEachOther();

    @ArchTest
    static final ArchRule PACKAGES_HAVE_NO_CYCLES =
            slices().matching(ROOT + "(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule NO_FIELD_OF_THE_EXACT_WORLD_IS_FLOATING = noFields()
            .that()
            .areDeclaredInClassesThat()
            .resideInAnyPackage(EXACT_WORLD)
            .should()
            .haveRawType(floating());

    @ArchTest
    static final ArchRule NO_METHOD_OF_THE_EXACT_WORLD_RETURNS_A_FLOATING_NUMBER = noMethods()
            .that()
            .areDeclaredInClassesThat()
            .resideInAnyPackage(EXACT_WORLD)
            .should()
            .haveRawReturnType(floating());

    @ArchTest
    static final ArchRule NO_METHOD_OF_THE_EXACT_WORLD_TAKES_A_FLOATING_NUMBER = noCodeUnits()
            .that()
            .areDeclaredInClassesThat()
            .resideInAnyPackage(EXACT_WORLD)
            .should()
            .haveRawParameterTypes(anyFloating());

    /** Also keeps doubles out of the bodies of methods: there is no other way from a decimal to one. */
    @ArchTest
    static final ArchRule ONLY_SAMPLE_TURNS_DECIMALS_INTO_DOUBLES = noClasses()
            .that()
            .resideOutsideOfPackage(ROOT + "sample..")
            .should()
            .callCodeUnitWhere(DescribedPredicate.describe(
                    "turns a decimal into a floating number",
                    call -> call.getTargetOwner().isEquivalentTo(BigDecimal.class)
                            && Set.of("doubleValue", "floatValue").contains(call.getName())));

    @ArchTest
    static final ArchRule NO_DECIMAL_OF_THE_EXACT_WORLD_COMES_FROM_A_DOUBLE = noClasses()
            .that()
            .resideInAnyPackage(EXACT_WORLD)
            .should()
            .callCodeUnitWhere(DescribedPredicate.describe(
                    "makes a decimal of a floating number",
                    call -> call.getTargetOwner().isEquivalentTo(BigDecimal.class)
                            && call.getTarget().getRawParameterTypes().stream().anyMatch(floating())));

    @ArchTest
    static final ArchRule NO_TEXT_IS_READ_AS_A_DOUBLE = noClasses()
            .should()
            .callCodeUnitWhere(DescribedPredicate.describe(
                    "reads a text as a floating number",
                    call -> isFloating(call.getTargetOwner())
                            && Set.of("parseDouble", "parseFloat", "valueOf", "<init>")
                                    .contains(call.getName())
                            && call.getTarget().getRawParameterTypes().stream()
                                    .anyMatch(type -> type.isEquivalentTo(String.class))));

    @ArchTest
    static final ArchRule THE_CORE_HAS_NO_CLOCK = noClasses()
            .should()
            .callCodeUnitWhere(DescribedPredicate.describe(
                    "asks what time it is",
                    call -> (call.getName().equals("now")
                                    && List.of(
                                                    Instant.class,
                                                    LocalDate.class,
                                                    LocalDateTime.class,
                                                    LocalTime.class,
                                                    OffsetDateTime.class,
                                                    ZonedDateTime.class)
                                            .stream()
                                            .anyMatch(call.getTargetOwner()::isEquivalentTo))
                            || call.getTargetOwner().isEquivalentTo(Clock.class)
                            || (call.getTargetOwner().isEquivalentTo(System.class)
                                    && Set.of("currentTimeMillis", "nanoTime").contains(call.getName()))));

    @ArchTest
    static final ArchRule THE_CORE_PRINTS_NOTHING = noClasses()
            .should()
            .accessField(System.class, "out")
            .orShould()
            .accessField(System.class, "err")
            .orShould()
            .callMethod(Throwable.class, "printStackTrace");

    @ArchTest
    static final ArchRule THE_CORE_HAS_NO_COMMAND_LINE_AND_DRAWS_NOTHING = noClasses()
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("picocli..", "com.lowagie..", "org.jfree..", "java.awt..", "javax.swing..");

    @ArchTest
    static final ArchRule ONLY_INTAKE_KNOWS_THE_FORMATS_OF_FILES = noClasses()
            .that()
            .resideOutsideOfPackage(ROOT + "intake..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("com.fasterxml.jackson..", "de.siegmar.fastcsv..");

    /**
     * The tables of the standards are read from the library's own resources by {@code tolerance}; that is no file of a user, so streams
     * are allowed there, but nothing that opens a file by its path.
     */
    @ArchTest
    static final ArchRule ONLY_INTAKE_OPENS_FILES = noClasses()
            .that()
            .resideOutsideOfPackage(ROOT + "intake..")
            .should()
            .dependOnClassesThat(
                    resideInAnyPackage("java.nio.file..").or(named("java.io.File", "java.io.FileInputStream")));

    @ArchTest
    static final ArchRule MATHEMATICS_LIBRARIES_STAY_OUT_OF_THE_EXACT_WORLD = noClasses()
            .that()
            .resideInAnyPackage(EXACT_WORLD)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("org.apache.commons..");

    /** An exact value that nobody can change: no field of the spine is reassigned after construction. */
    @ArchTest
    static final ArchRule VALUES_OF_THE_SPINE_ARE_FINAL = noFields()
            .that()
            .areDeclaredInClassesThat()
            .resideInAnyPackage(ROOT + "quantity..", ROOT + "plan..", ROOT + "inspection..", ROOT + "conformance..")
            .should()
            .notBeFinal();

    private static boolean isFloating(JavaClass type) {
        return FLOATING.contains(type.getName());
    }

    private static DescribedPredicate<JavaClass> floating() {
        return DescribedPredicate.describe("a floating number", ArchitectureTest::isFloating);
    }

    private static DescribedPredicate<List<JavaClass>> anyFloating() {
        return DescribedPredicate.describe(
                "with a floating number among them", types -> types.stream().anyMatch(ArchitectureTest::isFloating));
    }

    private static DescribedPredicate<JavaClass> named(String... names) {
        Set<String> wanted = Set.of(names);
        return DescribedPredicate.describe("one of " + wanted, type -> wanted.contains(type.getName()));
    }
}
