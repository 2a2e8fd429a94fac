package haywright.app.compute.topic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.app.document.RanchDocument;
import haywright.app.document.TinLantern;
import haywright.feeding.Rations;
import org.junit.jupiter.api.Test;

/** An answer goes by whose it is, whatever they are called. */
class TwinsInRationsTest {
    @Test
    void oneNameForAllGroupsAndStacksMovesNoFigure() {
        var documents = new RanchDocument();
        var ranch = TinLantern.ranch();
        var tree = documents.tree(ranch);
        for (var part : new String[] {"groups", "lots"}) {
            tree.get(part).forEach(one -> ((ObjectNode) one).put("name", "Twin"));
        }
        var day = ranch.settings().today(java.time.LocalDate.EPOCH);
        var known = RationsTopic.answer(new Rations(ranch, day)).answer();
        var twins = RationsTopic.answer(new Rations(documents.ranch(tree), day)).answer();
        assertThat(twins.jointChance()).isCloseTo(known.jointChance(), within(1e-9));
        assertThat(twins.runsOut().stream().map(one -> one.date()))
                .containsExactlyInAnyOrderElementsOf(
                        known.runsOut().stream().map(one -> one.date()).toList());
    }
}
