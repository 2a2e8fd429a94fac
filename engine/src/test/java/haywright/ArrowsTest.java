package haywright;

import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import java.util.Arrays;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The rooms point one way, and only lp knows the solver. */
@AnalyzeClasses(packages = "haywright", importOptions = ImportOption.DoNotIncludeTests.class)
class ArrowsTest {
    /** From the bottom up to the document and what is below a yard. */
    private static final String[] TO_RANCH = {
        "quantity", "workings", "chance", "lp", "sampling", "forage", "weather", "cattle", "diet", "ration", "ranch"
    };

    @ArchTest
    static final ArchRule roomsPointOneWay = layeredArchitecture()
            .consideringOnlyDependenciesInLayers()
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
            .layer("outlook")
            .definedBy("haywright.outlook..")
            .layer("match")
            .definedBy("haywright.match..")
            .layer("season")
            .definedBy("haywright.season..")
            .layer("feeding")
            .definedBy("haywright.feeding..")
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
            .mayOnlyAccessLayers("quantity", "workings", "chance", "sampling", "forage", "weather", "cattle", "diet")
            .whereLayer("outlook")
            .mayOnlyAccessLayers(TO_RANCH)
            .whereLayer("match")
            .mayOnlyAccessLayers(
                    "quantity",
                    "workings",
                    "chance",
                    "forage",
                    "weather",
                    "cattle",
                    "diet",
                    "ration",
                    "ranch",
                    "outlook")
            .whereLayer("season")
            .mayOnlyAccessLayers(and(TO_RANCH, "outlook"))
            .whereLayer("feeding")
            .mayOnlyAccessLayers(and(TO_RANCH, "outlook", "season"));

    private static String[] and(String[] layers, String... more) {
        return Stream.concat(Arrays.stream(layers), Arrays.stream(more)).toArray(String[]::new);
    }

    @ArchTest
    static final ArchRule roomsInForage = layeredArchitecture()
            .consideringOnlyDependenciesInLayers()
            .layer("forage")
            .definedBy("haywright.forage")
            .layer("energy")
            .definedBy("haywright.forage.energy")
            .layer("book")
            .definedBy("haywright.forage.book")
            .layer("hazard")
            .definedBy("haywright.forage.hazard")
            .layer("lab")
            .definedBy("haywright.forage.lab")
            .layer("lot")
            .definedBy("haywright.forage.lot")
            .whereLayer("forage")
            .mayNotAccessAnyLayer()
            .whereLayer("energy")
            .mayOnlyAccessLayers("forage")
            .whereLayer("book")
            .mayOnlyAccessLayers("forage", "energy")
            .whereLayer("hazard")
            .mayOnlyAccessLayers("forage", "book")
            .whereLayer("lab")
            .mayOnlyAccessLayers("forage", "energy", "book", "hazard")
            .whereLayer("lot")
            .mayOnlyAccessLayers("forage", "energy", "book", "hazard", "lab");

    @ArchTest
    static final ArchRule roomsInCattle = layeredArchitecture()
            .consideringOnlyDependenciesInLayers()
            .layer("cattle")
            .definedBy("haywright.cattle")
            .layer("herd")
            .definedBy("haywright.cattle.herd")
            .layer("cold")
            .definedBy("haywright.cattle.cold")
            .layer("intake")
            .definedBy("haywright.cattle.intake")
            .layer("need")
            .definedBy("haywright.cattle.need")
            .whereLayer("cattle")
            .mayNotAccessAnyLayer()
            .whereLayer("herd")
            .mayOnlyAccessLayers("cattle")
            .whereLayer("cold")
            .mayOnlyAccessLayers("cattle")
            .whereLayer("intake")
            .mayOnlyAccessLayers("cattle")
            .whereLayer("need")
            .mayOnlyAccessLayers("cattle", "herd", "cold", "intake");

    @ArchTest
    static final ArchRule roomsInSampling = layeredArchitecture()
            .consideringOnlyDependenciesInLayers()
            .layer("stock")
            .definedBy("haywright.sampling.stock")
            .layer("sampling")
            .definedBy("haywright.sampling")
            .layer("field")
            .definedBy("haywright.sampling.field")
            .whereLayer("stock")
            .mayNotAccessAnyLayer()
            .whereLayer("sampling")
            .mayOnlyAccessLayers("stock")
            .whereLayer("field")
            .mayOnlyAccessLayers("stock", "sampling");

    @ArchTest
    static final ArchRule roomsInSeason = layeredArchitecture()
            .consideringOnlyDependenciesInLayers()
            .layer("given")
            .definedBy("haywright.season.given")
            .layer("play")
            .definedBy("haywright.season.play")
            .layer("kept")
            .definedBy("haywright.season.kept")
            .whereLayer("given")
            .mayNotAccessAnyLayer()
            .whereLayer("play")
            .mayOnlyAccessLayers("given")
            .whereLayer("kept")
            .mayOnlyAccessLayers("given", "play");

    /** A room that holds more than a reader can take in at a glance gets rooms inside. */
    @ArchTest
    static void noRoomHoldsMoreThanThirty(JavaClasses all) {
        var crowded = all.stream()
                .filter(c -> c.isTopLevelClass() && !c.getSimpleName().equals("package-info"))
                .collect(Collectors.groupingBy(JavaClass::getPackageName, Collectors.counting()));
        crowded.values().removeIf(classes -> classes <= 30);
        assertThat(crowded).isEmpty();
    }

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
