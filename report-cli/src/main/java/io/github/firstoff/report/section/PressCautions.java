package io.github.firstoff.report.section;

import io.github.firstoff.assembly.Joint;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.report.model.Tone;
import io.github.firstoff.words.Labels;
import java.util.ArrayList;
import java.util.List;

/**
 * What whoever presses, heats or cools must heed. Its first sentence is set in the type of the answer, the rest in that of the results: a warning
 * is never smaller than what it warns about.
 */
public final class PressCautions {
    private final Joint joint;

    /** The cautions for one joint. */
    public PressCautions(Joint joint) {
        this.joint = joint;
    }

    /** The cautions. */
    public List<Block> blocks() {
        boolean bearing = joint.bearing().isPresent();
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Headline(
                Text.of(Labels.text(bearing ? "press.caution.head-bearing" : "press.caution.head")), Tone.PLAIN));
        blocks.add(caution(Labels.text("press.caution.pressing")));
        blocks.add(caution(Labels.text("press.caution.heat")));
        blocks.add(caution(Labels.text(bearing ? "press.caution.bearing" : "press.caution.rules")));
        return blocks;
    }

    private static Block caution(String text) {
        return new Block.Caution(Text.of(text));
    }
}
