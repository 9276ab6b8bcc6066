package earthing.cli;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import org.jspecify.annotations.NullMarked;

/** The command line reads, asks the library and writes; it computes nothing. */
@AnalyzeClasses(packages = "earthing.cli", importOptions = DoNotIncludeTests.class)
final class CommandLineArchitectureTest {

    @ArchTest
    static void enoughClassesAreLookedAt(JavaClasses classes) {
        assertThat(classes.size()).isGreaterThanOrEqualTo(6);
        assertThat(classes)
                .allSatisfy(type -> assertThat(type.getPackage().isAnnotatedWith(NullMarked.class))
                        .as(type.getName())
                        .isTrue());
    }

    @ArchTest
    static final ArchRule nothingIsComputed = noClasses()
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("org.apache.commons.math3..", "org.ejml..")
            .orShould()
            .accessClassesThat()
            .belongToAnyOf(Math.class, StrictMath.class);

    @ArchTest
    static final ArchRule physicsIsReachedThroughTheStudiesOnly = noClasses()
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "earthing.numeric..",
                    "earthing.network..",
                    "earthing.soil..",
                    "earthing.conductor..",
                    "earthing.fault..",
                    "earthing.surge..",
                    "earthing.electrode..",
                    "earthing.safety..");

    @ArchTest
    static final ArchRule onlyTheEntryEndsTheProcess =
            noClasses().that().doNotHaveSimpleName("Main").should().callMethod(System.class, "exit", int.class);

    @ArchTest
    static final ArchRule noPdfLibraryIsSeen = noClasses()
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "com.openhtmltopdf..",
                    "org.apache.pdfbox..",
                    "org.apache.batik..",
                    "java.awt..",
                    "earthing.report.pdf..")
            .as("the command line asks earthing.report.Report for a PDF");
}
