package baymist.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Data flows one way: a package uses only packages named before it in {@link #ORDER}. */
class PackageOrderTest {
    /** Reading order of the engine, support packages first. */
    private static final List<String> ORDER = List.of(
            "problem",
            "units",
            "numeric",
            "ledger",
            "geom",
            "scene",
            "scene.io",
            "cavity",
            "voxel",
            "access",
            "spray",
            "airflow",
            "fog",
            "film",
            "seam",
            "coverage",
            "surface",
            "run",
            "recording",
            "study",
            "field",
            "explain",
            "plan",
            "size",
            "card",
            "inspect",
            "report",
            "verify");

    private static final JavaClasses ENGINE = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("baymist");

    @Test
    void aPackageUsesOnlyPackagesBeforeIt() {
        classes()
                .that()
                .resideInAPackage("baymist..")
                .should(dependOnlyUpwards())
                .check(ENGINE);
    }

    @Test
    void packagesFormNoCycle() {
        slices().matching("baymist.(**)").should().beFreeOfCycles().check(ENGINE);
    }

    @Test
    void engineKnowsNoWindowsAndNoCommandLine() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("java.awt..", "javax.swing..", "javafx..", "picocli..")
                .check(ENGINE);
    }

    @Test
    void onlyGeometryUsesTheBooleanLibrary() {
        noClasses()
                .that()
                .resideOutsideOfPackages("baymist.geom..", "baymist.cavity..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("org.apache.commons.geometry..")
                .check(ENGINE);
    }

    @Test
    void engineDoesNotPrint() {
        noClasses()
                .should()
                .accessField(System.class, "out")
                .orShould()
                .accessField(System.class, "err")
                .check(ENGINE);
    }

    @Test
    void engineDrawsNoUnseededRandomNumbers() {
        noClasses().should().callMethod(Math.class, "random").check(ENGINE);
    }

    @Test
    void threadsAreMadeInOnePlace() {
        noClasses()
                .that()
                .resideOutsideOfPackage("baymist.numeric")
                .should()
                .dependOnClassesThat()
                .areAssignableTo(java.util.concurrent.Executor.class)
                .orShould()
                .dependOnClassesThat()
                .areAssignableTo(Thread.class)
                .check(ENGINE);
    }

    @Test
    void everyPackageTeaches() throws Exception {
        for (String name : ORDER) {
            Path file = Path.of("src/main/java/baymist", name.replace('.', '/'), "package-info.java");
            String text = Files.readString(file);
            if (text.length() < 300) {
                throw new AssertionError(file + " says too little about its package");
            }
        }
    }

    private static ArchCondition<JavaClass> dependOnlyUpwards() {
        return new ArchCondition<>("use only packages before their own") {
            @Override
            public void check(JavaClass origin, ConditionEvents events) {
                int own = ORDER.indexOf(nameOf(origin));
                if (own < 0) {
                    events.add(SimpleConditionEvent.violated(origin, origin + " is in a package that ORDER lacks"));
                    return;
                }
                origin.getDirectDependenciesFromSelf().stream()
                        .filter(d -> d.getTargetClass().getPackageName().startsWith("baymist."))
                        .filter(d -> ORDER.indexOf(nameOf(d.getTargetClass())) > own)
                        .forEach(d -> events.add(SimpleConditionEvent.violated(origin, d.getDescription())));
            }
        };
    }

    private static String nameOf(JavaClass c) {
        return c.getPackageName().substring("baymist.".length());
    }
}
