package haywright.app;

import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.stream.Collectors;

/** The rooms of the program point one way too. */
@AnalyzeClasses(packages = "haywright.app", importOptions = ImportOption.DoNotIncludeTests.class)
class AppArrowsTest {
    @ArchTest
    static final ArchRule roomsPointOneWay = layeredArchitecture()
            .consideringOnlyDependenciesInLayers()
            .layer("words")
            .definedBy("haywright.app.words..")
            .layer("fonts")
            .definedBy("haywright.app.fonts..")
            .layer("document")
            .definedBy("haywright.app.document..")
            .layer("exchange")
            .definedBy("haywright.app.exchange..")
            .layer("store")
            .definedBy("haywright.app.store..")
            .layer("report")
            .definedBy("haywright.app.report..")
            .layer("compute")
            .definedBy("haywright.app.compute..")
            .layer("web")
            .definedBy("haywright.app.web..")
            .layer("server")
            .definedBy("haywright.app.server..")
            .layer("cli")
            .definedBy("haywright.app.cli..")
            .whereLayer("words")
            .mayNotAccessAnyLayer()
            .whereLayer("fonts")
            .mayNotAccessAnyLayer()
            .whereLayer("document")
            .mayOnlyAccessLayers("words")
            .whereLayer("exchange")
            .mayOnlyAccessLayers("words", "fonts", "document")
            .whereLayer("store")
            .mayOnlyAccessLayers("words", "document", "exchange")
            .whereLayer("report")
            .mayOnlyAccessLayers("words", "fonts", "document")
            .whereLayer("compute")
            .mayOnlyAccessLayers("words", "document", "exchange")
            .whereLayer("web")
            .mayOnlyAccessLayers("words", "document", "exchange", "store", "report")
            .whereLayer("server")
            .mayOnlyAccessLayers("words", "document", "store", "web");

    /** No step of the trail leads back to the one that leads to it. */
    @ArchTest
    static final ArchRule noCircles =
            slices().matching("haywright.app.(**)").should().beFreeOfCycles();

    @ArchTest
    static void noRoomHoldsMoreThanThirty(JavaClasses all) {
        var crowded = all.stream()
                .filter(c -> c.isTopLevelClass() && !c.getSimpleName().equals("package-info"))
                .filter(c -> !c.getSimpleName().startsWith("Jte"))
                .collect(Collectors.groupingBy(JavaClass::getPackageName, Collectors.counting()));
        crowded.values().removeIf(classes -> classes <= 30);
        assertThat(crowded).isEmpty();
    }
}
