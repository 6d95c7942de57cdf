package baymist.viewer.model;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

/** What is shown is decided without a window: models and drawing arithmetic load without JavaFX. */
class NoWindowTest {
    private static final JavaClasses VIEWER = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("baymist.viewer");

    @Test
    void modelsAndDrawingKnowNoWindow() {
        assertTrue(VIEWER.contain(TimeModel.class), "the rule must have something to hold");
        noClasses()
                .that()
                .resideInAnyPackage("baymist.viewer.model..", "baymist.viewer.draw..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("javafx..", "java.awt..", "javax.swing..", "baymist.viewer.fx..")
                .check(VIEWER);
    }

    @Test
    void modelsKnowNoDrawing() {
        noClasses()
                .that()
                .resideInAPackage("baymist.viewer.model..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("baymist.viewer.draw..")
                .check(VIEWER);
    }

    @Test
    void modelsPrintNothing() {
        noClasses()
                .that()
                .resideInAPackage("baymist.viewer.model..")
                .should()
                .accessField(System.class, "out")
                .orShould()
                .accessField(System.class, "err")
                .check(VIEWER);
    }
}
