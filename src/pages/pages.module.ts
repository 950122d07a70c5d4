import { Module } from '@nestjs/common';
import { AssetController } from './assets/asset.controller.js';

@Module({ controllers: [AssetController] })
export class PagesModule {}
