import type { Approval } from '../../core/medicine/approval.ts';
import type { Figure, Medicine, Packet, Regimen, Withdrawal } from '../../core/medicine/formulary.ts';
import { MEDICINES } from '../../core/medicine/medicines.ts';
import type { FigureView, PacketView, RegimenView } from '../../shared/shed.ts';
import { rfc3339 } from './times.ts';

function figure(label: FigureView['label'], { value, evidence, source }: Figure): FigureView {
  return { label, value, evidence, source };
}

function withdrawal(label: FigureView['label'], rule: Withdrawal): FigureView {
  if (rule.kind === 'hours')
    return { label, value: rule.hours, evidence: rule.evidence, source: rule.source };
  const evidence = rule.kind === 'unknown' ? 'not-known' : 'not-for-people';
  return { label, value: null, evidence, source: rule.source };
}

function regimenView(medicine: Medicine, regimen: Regimen, approval: Approval | undefined): RegimenView {
  return {
    id: regimen.id,
    medicine: medicine.name,
    active: medicine.active,
    species: regimen.species,
    use: regimen.use,
    figures: [
      figure('target', regimen.target),
      figure('ceiling', regimen.ceiling),
      regimen.floor === null
        ? { label: 'floor', value: null, evidence: 'not-known', source: 'No source read gives one' }
        : figure('floor', regimen.floor),
      figure('repeat', regimen.repeatAfterDays),
      withdrawal('meat', regimen.meat),
      withdrawal('milk', regimen.milk),
    ],
    notes: regimen.notes,
    approval:
      approval === undefined
        ? null
        : {
            by: approval.by,
            direction: approval.direction,
            at: rfc3339(approval.atMs),
            meatHours: approval.meatHours,
            milkHours: approval.milkHours,
          },
  };
}

/** Every regimen of the formulary, with the approval in force. */
export function regimenViews(approvals: readonly Approval[]): RegimenView[] {
  return MEDICINES.flatMap((medicine) =>
    medicine.regimens.map((regimen) =>
      regimenView(
        medicine,
        regimen,
        approvals.find((approval) => approval.regimenId === regimen.id),
      ),
    ),
  );
}

function packetView(medicine: Medicine, packet: Packet): PacketView {
  return {
    id: packet.id,
    medicine: medicine.name,
    active: medicine.active,
    grossGrams: packet.grossGrams.value,
    activeGrams: packet.activeGrams.value,
    madeUpToMl: packet.madeUpToMl.value,
    handling: medicine.handling,
  };
}

/** Every packet of the formulary that can be mixed. */
export function packetViews(): PacketView[] {
  return MEDICINES.flatMap((medicine) => medicine.packets.map((packet) => packetView(medicine, packet)));
}
