package io.github.firstoff.report.section;

import io.github.firstoff.assembly.Joint;
import io.github.firstoff.report.model.Block;
import io.github.firstoff.report.model.Text;
import io.github.firstoff.report.model.Tone;
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
                Text.of("Caution: pressed parts pinch and can fly, heated and cooled parts burn. Wear eye protection"
                        + (bearing ? "; never strike a bearing ring." : ".")),
                Tone.PLAIN));
        blocks.add(caution(
                "keep hands out from between the parts and the press, press straight and behind a guard, and stop when the force leaves"
                        + " the range stated here."));
        blocks.add(caution(
                "heat and cool only with what is made for it, never with an open flame; handle hot and very cold parts with gloves"
                        + " and tongs, and air the room where cold gas is used."));
        if (bearing) {
            blocks.add(
                    caution(
                            "press a bearing on by the ring that is being fitted and by nothing else, so that no force goes through the balls;"
                                    + " no hammer, no drift. The bearing maker's instructions and your local rules come before this sheet."));
        } else {
            blocks.add(caution("the rules of your shop and of your country come before this sheet."));
        }
        return blocks;
    }

    private static Block caution(String text) {
        return new Block.Caution(Text.of(text));
    }
}
