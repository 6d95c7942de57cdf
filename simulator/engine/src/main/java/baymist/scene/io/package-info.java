@NullMarked
package baymist.scene.io;

import org.jspecify.annotations.NullMarked;
