package io.github.firstoff.report;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

@AnalyzeClasses(packages = "io.github.firstoff", importOptions = ImportOption.DoNotIncludeTests.class)
class ReportArchitectureTest {
    private static final String ROOT = "io.github.firstoff.";

    @ArchTest
    static final ArchRule ONLY_THE_RENDERER_DRAWS = noClasses()
            .that()
            .resideOutsideOfPackage(ROOT + "report.pdf..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("com.lowagie..", "java.awt..", "org.jfree..");

    @ArchTest
    static final ArchRule ONLY_PLOTS_KNOW_THE_CHART_LIBRARY = noClasses()
            .that()
            .haveNameNotMatching(".*\\.Plots(\\$.*)?")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("org.jfree..");

    @ArchTest
    static final ArchRule THE_RENDERER_KNOWS_ONLY_THE_MODEL = classes()
            .that()
            .resideInAPackage(ROOT + "report.pdf..")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(
                    ROOT + "report.pdf..",
                    ROOT + "report.model..",
                    ROOT + "report.figure..",
                    ROOT + "words..",
                    "java..",
                    "com.lowagie..",
                    "com.github.weisj..",
                    "org.jfree..",
                    "org.jspecify..");

    @ArchTest
    static final ArchRule THE_MODEL_KNOWS_ONLY_FIGURES = classes()
            .that()
            .resideInAPackage(ROOT + "report.model..")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(ROOT + "report.model..", ROOT + "report.figure..", "java..", "org.jspecify..");

    @ArchTest
    static final ArchRule FIGURES_KNOW_NOBODY = classes()
            .that()
            .resideInAPackage(ROOT + "report.figure..")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(ROOT + "report.figure..", "java..", "org.jspecify..");

    @ArchTest
    static final ArchRule WORDS_KNOW_NOBODY = classes()
            .that()
            .resideInAPackage(ROOT + "words..")
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(ROOT + "words..", "java..", ROOT + "remark..", "org.jspecify..");
}
