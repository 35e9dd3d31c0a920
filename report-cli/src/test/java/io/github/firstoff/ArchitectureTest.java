package io.github.firstoff;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.math.BigDecimal;
import java.util.Set;

/** The shape of the command line and the sheets; what the renderer may know stands in {@code ReportArchitectureTest}. */
@AnalyzeClasses(packages = "io.github.firstoff", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
    private static final String ROOT = "io.github.firstoff.";

    /** Layers that are not there yet are optional, so that a module that grows is not held up. */
    @ArchTest
    static final ArchRule COMMANDS_MAKE_SHEETS_AND_SHEETS_BECOME_PAGES = layeredArchitecture()
            .consideringOnlyDependenciesInLayers()
            .withOptionalLayers(true)
            .layer("command")
            .definedBy(ROOT + "command..")
            .layer("keyed")
            .definedBy(ROOT + "keyed..")
            .layer("sheet")
            .definedBy(ROOT + "sheet..")
            .layer("composition")
            .definedBy(ROOT + "report.section..", ROOT + "report.kind..")
            .layer("pages")
            .definedBy(ROOT + "report.model..", ROOT + "report.figure..")
            .layer("renderer")
            .definedBy(ROOT + "report.pdf..")
            .layer("proof")
            .definedBy(ROOT + "proof..")
            .whereLayer("command")
            .mayNotBeAccessedByAnyLayer()
            .whereLayer("keyed")
            .mayOnlyAccessLayers("sheet")
            .whereLayer("sheet")
            .mayNotAccessAnyLayer()
            .whereLayer("composition")
            .mayOnlyAccessLayers("sheet", "pages")
            .whereLayer("pages")
            .mayNotAccessAnyLayer()
            .whereLayer("renderer")
            .mayOnlyAccessLayers("pages")
            .whereLayer("proof")
            .mayOnlyAccessLayers("sheet", "pages", "renderer")
            .whereLayer("proof")
            .mayOnlyBeAccessedByLayers("command");

    /** Unsigned sheets are made without a class of these libraries, and every use of a key stands in one place. */
    @ArchTest
    static final ArchRule ONLY_PROOF_READS_SHEETS_BACK_AND_SIGNS = noClasses()
            .that()
            .resideOutsideOfPackage(ROOT + "proof..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("org.apache.pdfbox..", "org.bouncycastle..", "java.security.cert..");

    /** What a page looks like cannot change a verdict: pages know nothing of the library at all. */
    @ArchTest
    static final ArchRule PAGES_KNOW_NOTHING_OF_THE_LIBRARY = noClasses()
            .that()
            .resideInAnyPackage(ROOT + "report.model..", ROOT + "report.figure..", ROOT + "report.pdf..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    ROOT + "quantity..",
                    ROOT + "tolerance..",
                    ROOT + "plan..",
                    ROOT + "inspection..",
                    ROOT + "conformance..",
                    ROOT + "sample..",
                    ROOT + "stats..",
                    ROOT + "study..",
                    ROOT + "intake..");

    @ArchTest
    static final ArchRule PACKAGES_HAVE_NO_CYCLES =
            slices().matching(ROOT + "(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule ONLY_COMMANDS_KNOW_THE_COMMAND_LINE = noClasses()
            .that()
            .resideOutsideOfPackage(ROOT + "command..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("picocli..");

    @ArchTest
    static final ArchRule ONLY_COMMANDS_TALK_TO_THE_TERMINAL = noClasses()
            .that()
            .resideOutsideOfPackage(ROOT + "command..")
            .should()
            .accessField(System.class, "out")
            .orShould()
            .accessField(System.class, "err")
            .orShould()
            .callMethod(System.class, "exit", int.class)
            .orShould()
            .callMethod(Throwable.class, "printStackTrace");

    /** A verdict is printed as it was decided; a sheet that turned a decimal into a double could print another figure. */
    @ArchTest
    static final ArchRule NO_SHEET_TURNS_DECIMALS_INTO_DOUBLES = noClasses()
            .that()
            .resideOutsideOfPackage(ROOT + "sample..")
            .should()
            .callCodeUnitWhere(DescribedPredicate.describe(
                    "turns a decimal into a floating number, or a text into one",
                    call -> (call.getTargetOwner().isEquivalentTo(BigDecimal.class)
                                    && Set.of("doubleValue", "floatValue").contains(call.getName()))
                            || (call.getTargetOwner().isEquivalentTo(Double.class)
                                    && call.getName().equals("parseDouble"))));

    /** The time of a sheet is an input like any other: two runs over the same inputs give the same bytes. */
    @ArchTest
    static final ArchRule ONLY_COMMANDS_KNOW_WHAT_TIME_IT_IS = noClasses()
            .that()
            .resideOutsideOfPackage(ROOT + "command..")
            .should()
            .callCodeUnitWhere(DescribedPredicate.describe(
                    "asks what time it is",
                    call -> (call.getTargetOwner().getPackageName().equals("java.time")
                                    && call.getName().equals("now"))
                            || (call.getTargetOwner().isEquivalentTo(System.class)
                                    && call.getName().equals("currentTimeMillis"))));
}
