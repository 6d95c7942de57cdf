@NullMarked
package baymist.voxel;

import org.jspecify.annotations.NullMarked;
