package haywright;

import static com.tngtech.archunit.library.Architectures.layeredArchitecture;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;

/** The rooms point one way, and only lp knows the solver. */
@AnalyzeClasses(packages = "haywright", importOptions = ImportOption.DoNotIncludeTests.class)
class ArrowsTest {
    @ArchTest
    static final ArchRule roomsPointOneWay = layeredArchitecture()
            .consideringOnlyDependenciesInLayers()
            .withOptionalLayers(true)
            .layer("quantity")
            .definedBy("haywright.quantity..")
            .layer("workings")
            .definedBy("haywright.workings..")
            .layer("chance")
            .definedBy("haywright.chance..")
            .layer("lp")
            .definedBy("haywright.lp..")
            .layer("sampling")
            .definedBy("haywright.sampling..")
            .layer("weather")
            .definedBy("haywright.weather..")
            .layer("forage")
            .definedBy("haywright.forage..")
            .layer("cattle")
            .definedBy("haywright.cattle..")
            .layer("diet")
            .definedBy("haywright.diet..")
            .layer("ration")
            .definedBy("haywright.ration..")
            .layer("ranch")
            .definedBy("haywright.ranch..")
            .whereLayer("quantity")
            .mayNotAccessAnyLayer()
            .whereLayer("workings")
            .mayOnlyAccessLayers("quantity")
            .whereLayer("chance")
            .mayOnlyAccessLayers("quantity", "workings")
            .whereLayer("lp")
            .mayOnlyAccessLayers("quantity", "workings")
            .whereLayer("sampling")
            .mayOnlyAccessLayers("quantity", "workings", "chance")
            .whereLayer("weather")
            .mayOnlyAccessLayers("quantity", "workings", "chance")
            .whereLayer("forage")
            .mayOnlyAccessLayers("quantity", "workings", "chance", "sampling")
            .whereLayer("cattle")
            .mayOnlyAccessLayers("quantity", "workings", "chance", "weather")
            .whereLayer("diet")
            .mayOnlyAccessLayers("quantity", "workings", "chance", "lp", "forage", "cattle")
            .whereLayer("ration")
            .mayOnlyAccessLayers("quantity", "workings", "chance", "lp", "forage", "cattle", "diet")
            .whereLayer("ranch")
            .mayOnlyAccessLayers(
                    "quantity", "workings", "chance", "sampling", "forage", "weather", "cattle", "diet", "ration");

    @ArchTest
    static final ArchRule onlyLpKnowsTheSolver = ArchRuleDefinition.noClasses()
            .that()
            .resideOutsideOfPackage("haywright.lp..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("com.sun.jna..", "com.google.ortools..");

    @ArchTest
    static final ArchRule theEngineHasNoFilesClockOrWeb = ArchRuleDefinition.noClasses()
            .that()
            .resideInAPackage("haywright..")
            .and()
            .resideOutsideOfPackages("haywright.lp..", "haywright.app..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("java.nio.file..", "java.net..", "java.sql..", "java.util.logging..");
}
